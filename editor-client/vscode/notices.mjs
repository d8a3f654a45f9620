// Writes NOTICES.txt: the licence of every library that ends up in what is shipped. Made when packing, never kept in git.
//   node notices.mjs OUT [project.assets.json]
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const require = createRequire(import.meta.url);
const [out, assets] = process.argv.slice(2);
const parts = [];
/** The holder of each text that stood already: equal texts are listed once. */
const told = new Map();

/** What a package that names its licence by address alone is under. */
const byAddress = new Map([['https://github.com/MiloszKrajewski/K4os.Compression.LZ4/blob/master/LICENSE?raw=true', 'MIT']]);

/** One library: its own licence file, else the standard text of the licence that it names. */
function add(library, licence, copyright, own) {
  const text = own || standard(licence);
  if (text === '') {
    throw new Error(`${library} brings no licence text, and ${licence} is none of the SPDX list`);
  }
  const same = told.get(text);
  told.set(text, same ?? library);
  parts.push([`${library} (${licence})`, copyright, same === undefined ? text : `The text is the one under ${same}.`].filter((part) => part !== '').join('\n\n'));
}

function standard(licence) {
  try {
    return require(`spdx-license-list/licenses/${licence}.json`).licenseText.trim();
  } catch {
    return '';
  }
}

const licenceIn = (folder) => readdirSync(folder, { withFileTypes: true })
  .filter((file) => file.isFile() && /^(licen[cs]e|notice|third-?party-?notices)/i.test(file.name))
  .map((file) => readFileSync(join(folder, file.name), 'utf8').trim())
  .join('\n\n');

// the libraries of the extension
const shipped = execFileSync('npm', ['ls', '--omit=dev', '--all', '--parseable'], { encoding: 'utf8' }).trim().split('\n').slice(1);
for (const folder of [...new Set(shipped)].sort()) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  add(`${name} ${version}`, license, '', licenceIn(folder));
}

// the libraries of the server, as the build resolved them
if (assets !== undefined && existsSync(assets)) {
  const read = JSON.parse(readFileSync(assets, 'utf8'));
  const folders = Object.keys(read.packageFolders);
  for (const [id, library] of Object.entries(read.libraries).sort(([a], [b]) => a.localeCompare(b))) {
    const folder = library.type === 'package' && folders.map((root) => join(root, library.path)).find((path) => existsSync(path));
    if (folder) {
      const spec = readdirSync(folder).find((name) => name.endsWith('.nuspec'));
      const text = spec === undefined ? '' : readFileSync(join(folder, spec), 'utf8');
      const named = /<license(?:Url)?(?: [^>]*)?>([^<]*)</.exec(text)?.[1] ?? '';
      const licence = byAddress.get(named) ?? named;
      const copyright = /<copyright>([^<]*)</.exec(text)?.[1] ?? '';
      add(id.replace('/', ' '), licence, copyright, licenceIn(folder));
    }
  }
}
writeFileSync(out, `Libraries that are part of Health Notes, and their licences.\n\n${parts.join(`\n\n${'-'.repeat(80)}\n\n`)}\n`);
console.log(`${out}: ${parts.length} libraries`);
