// A PDF with pages of one paper: fonts, text that can always be printed, and a foot on every page.
import PDFDocument from 'pdfkit';
import type { Paper } from '../../core/quantities/paper.ts';
import type { Tongue } from '../../language/tongue.ts';
import { MISSING, printable } from './printable.ts';

export interface SheetOptions {
  paper: Paper;
  title: string;
  /** Of the boil, not of the printing, so that the same boil gives the same file. */
  date: Date;
  tongue: Tongue;
}

export interface TextOptions {
  size?: number;
  bold?: boolean;
  colour?: string;
  width?: number;
  align?: 'left' | 'center' | 'right';
  /** Cut to one line with an ellipsis. */
  oneLine?: boolean;
}

export const MARGIN = 42;
const FOOT = 20;
const INK = '#1c1c1c';

/** Points from the top left corner. */
export class Sheet {
  readonly doc: PDFKit.PDFDocument;
  readonly #tongue: Tongue;
  #isWhole = true;

  constructor({ paper, title, date, tongue }: SheetOptions) {
    this.#tongue = tongue;
    this.doc = new PDFDocument({
      size: paper === 'a4' ? 'A4' : 'LETTER',
      margin: 0,
      bufferPages: true,
      lang: tongue.tag,
      displayTitle: true,
      info: {
        Title: printable(title).text,
        Creator: 'Panwarden',
        Producer: 'Panwarden',
        CreationDate: date,
        ModDate: date,
      },
    });
  }

  get width(): number {
    return this.doc.page.width;
  }

  /** How far down there is room. */
  get bottom(): number {
    return this.doc.page.height - MARGIN - FOOT;
  }

  /** Writes and returns how high it stands. */
  text(text: string, x: number, y: number, options: TextOptions = {}): number {
    const { size = 9, bold = false, colour = INK, width = this.width - MARGIN - x, align = 'left', oneLine } = options;
    const shown = this.#shown(text);
    this.doc
      .font(bold ? 'Helvetica-Bold' : 'Helvetica')
      .fontSize(size)
      .fillColor(colour);
    const layout = {
      width,
      align,
      ...(oneLine === true ? { height: size * 1.1, ellipsis: '…', lineBreak: true } : {}),
    };
    const height = oneLine === true ? size * 1.2 : this.doc.heightOfString(shown, layout);
    this.doc.text(shown, x, y, layout);
    return height;
  }

  /** How high the text would stand. */
  heightOf(text: string, width: number, size = 9): number {
    return this.doc.font('Helvetica').fontSize(size).heightOfString(this.#shown(text), { width });
  }

  addPage(): void {
    this.doc.addPage();
  }

  /** Something that goes across every page. */
  onEveryPage(draw: (page: number, pages: number) => void): void {
    const { count } = this.doc.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      this.doc.switchToPage(page);
      draw(page + 1, count);
    }
  }

  /** The foot of every page, and the whole file in pieces. */
  async *finished(foot: string): AsyncGenerator<Uint8Array> {
    const missing = this.#isWhole ? '' : this.#tongue.say('paper.missing', { sign: MISSING });
    const said = [foot, missing].filter((part) => part !== '').join('. ');
    this.onEveryPage((page, pages) => {
      const y = this.doc.page.height - MARGIN + 4;
      const pagesText = pages === 1 ? '' : this.#tongue.say('paper.page', { page, pages });
      this.text(said, MARGIN, y, {
        size: 7,
        colour: '#555',
        width: this.width - 2 * MARGIN - 70,
        oneLine: true,
      });
      this.text(pagesText, this.width - MARGIN - 70, y, { size: 7, colour: '#555', width: 70, align: 'right' });
    });
    this.doc.end();
    for await (const piece of this.doc) yield piece as Uint8Array;
  }

  #shown(text: string): string {
    const shown = printable(text);
    if (!shown.isWhole) this.#isWhole = false;
    return shown.text;
  }
}
