// Renders the app's icon, drawn as SVG, to the sizes that desktops ask for.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { PROGRAM_FOLDER } from '../../src/program/program-files.ts';

/** Edges in pixels; the largest is what icons of Windows and macOS are made of. */
export const ICON_SIZES = [16, 24, 32, 48, 64, 128, 256, 512, 1024] as const;
const DRAWN_PIXELS = 512;
const USUAL_DPI = 72;

/** Writes one `NxN.png` a size into `folder`, which is made. */
export async function renderIcons(folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  for (const size of ICON_SIZES) {
    // Drawn anew at each size, so that the large ones are as sharp as the small ones.
    const density = Math.max(USUAL_DPI, (USUAL_DPI * size) / DRAWN_PIXELS);
    const drawn = sharp(join(PROGRAM_FOLDER, 'electron/packaging/icon.svg'), { density });
    await drawn
      .resize(size, size)
      .png()
      .toFile(join(folder, `${size}x${size}.png`));
  }
}
