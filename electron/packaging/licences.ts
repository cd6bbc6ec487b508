// Gathers the licences of everything that is handed on, refuses what may not be, and writes the bill of materials.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Spec, Validation } from '@cyclonedx/cyclonedx-library';
import { generateLicenseFile } from 'generate-license-file';
import { PROGRAM_FOLDER } from '../../src/program/program-files.ts';

/** From here both are packed. */
const PACKED_FROM = join(PROGRAM_FOLDER, 'dist/licences');
const LICENCES_FILE = 'THIRD-PARTY-LICENCES.txt';
const BILL_FILE = 'sbom.cdx.json';

/** Licences (SPDX) that let anybody hand the work on together with programs of other licences. */
const FREE = ['0BSD', 'Apache-2.0', 'BlueOak-1.0.0', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT'];
/** Packages that name no licence in their package.json, with what the licence file beside it says. */
const READ_IN_ITS_FILE: Readonly<Record<string, string>> = { 'png-js': 'MIT' };

/** One part of the bill of materials, as far as it is looked at (CycloneDX 1.6). */
export interface Component {
  name: string;
  group?: string;
  version?: string;
  purl?: string;
  licenses?: readonly { license?: { id?: string; name?: string }; expression?: string }[];
  components?: readonly Component[];
}

/** Every component of a bill, those within others too. */
export function allComponents(components: readonly Component[] = []): Component[] {
  return components.flatMap((component) => [component, ...allComponents(component.components)]);
}

/** The whole name of a component's package. */
export const packageName = ({ group, name }: Component): string => (group === undefined ? name : `${group}/${name}`);

/** One sentence for each component whose licence is missing, not known, or not among those that may be handed on. */
export function refusals(components: readonly Component[]): string[] {
  return components.flatMap((component) => {
    const name = packageName(component);
    const named = (component.licenses ?? []).map(
      ({ license, expression }) => expression ?? license?.id ?? license?.name,
    );
    const licences = named.length > 0 ? named : [READ_IN_ITS_FILE[name]];
    const bad = licences.filter((licence) => licence === undefined || !FREE.includes(licence));
    if (bad.length === 0) return [];
    const what = bad[0] === undefined ? 'names no licence' : `is under ${bad.join(', ')}, which nobody has looked at`;
    return [`${name} ${component.version ?? ''} ${what}.`];
  });
}

/**
 * Writes both files into a folder (absolute), which is made. Throws with a sentence when a licence is refused or the bill
 * does not keep to its schema.
 */
export async function writeLicences(folder = PACKED_FROM): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const bill = billOfPackages();
  bill.components.push(desktopRuntime());
  const refused = refusals(allComponents(bill.components));
  if (refused.length > 0) throw new Error(`Not everything may be handed on: ${refused.join(' ')}`);
  const text = `${JSON.stringify(bill, null, 2)}\n`;
  const wrong = await new Validation.JsonStrictValidator(Spec.Version.v1dot6).validate(text);
  if (wrong !== null) throw new Error(`The bill of materials is none: ${JSON.stringify(wrong)}.`);
  writeFileSync(join(folder, BILL_FILE), text);
  await generateLicenseFile([join(PROGRAM_FOLDER, 'package.json')], join(folder, LICENCES_FILE), {
    lineEnding: 'lf',
    append: [join(PROGRAM_FOLDER, 'electron/packaging/licence-texts.txt')],
  });
}

/** npm's own bill leaves out what the tests need as well as the program, so CycloneDX's own tool makes it. */
function billOfPackages(): { components: Component[] } {
  const tool = join(PROGRAM_FOLDER, 'node_modules/@cyclonedx/cyclonedx-npm/bin/cyclonedx-npm-cli.js');
  const words = ['--omit', 'dev', '--mc-type', 'application', '--output-reproducible', '--output-format', 'JSON'];
  const done = spawnSync(process.execPath, [tool, ...words], {
    cwd: PROGRAM_FOLDER,
    encoding: 'utf8',
    maxBuffer: 50_000_000,
  });
  if (done.status !== 0) throw new Error(`The bill of materials could not be made: ${done.stderr}`.trim());
  return JSON.parse(done.stdout) as { components: Component[] };
}

/** What the desktop packages hold besides: for npm a tool of the workshop, and so in no bill of its packages. */
function desktopRuntime(): Component & Record<string, unknown> {
  const manifest = readFileSync(join(PROGRAM_FOLDER, 'node_modules/electron/package.json'), 'utf8');
  const { version, license } = JSON.parse(manifest) as { version: string; license: string };
  return {
    type: 'framework',
    'bom-ref': `electron@${version}`,
    name: 'electron',
    version,
    scope: 'optional',
    description: 'With Chromium and Node, in the desktop packages only.',
    licenses: [{ license: { id: license } }],
    purl: `pkg:npm/electron@${version}`,
  };
}
