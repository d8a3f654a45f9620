// Writes NOTICES.txt, the licence of every library that ends up in what is shipped, and beside it bom.cdx.json, the same libraries as a
// software bill of materials (CycloneDX 1.6) without a time, so that the same sources give the same file. Made when packing, never kept in git.
//   node notices.mjs OUT [project.assets.json] [extension]      with "extension" the bill has the extension's own libraries too
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createHash } from 'node:crypto';
import { dirname, join } from 'node:path';

const require = createRequire(import.meta.url);
const [out, assets, what] = process.argv.slice(2);
const top = join(import.meta.dirname, '..', '..');
const parts = [];
const components = [];
const dependencies = [];
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

/** One library in the bill. A licence outside the SPDX list goes by its name. */
function bill(kind, name, version, licence, more) {
  const purl = `pkg:${kind}/${name.replace('@', '%40')}@${version}`;
  const spdx = standard(licence) !== '' ? { license: { id: licence } } : / (AND|OR|WITH) /.test(licence) ? { expression: licence } : { license: { name: licence } };
  components.push({ type: 'library', 'bom-ref': purl, name, version, scope: 'required', licenses: [spdx], purl, ...more });
  return purl;
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
  if (what === 'extension') {
    const { integrity = '' } = JSON.parse(readFileSync('package-lock.json', 'utf8')).packages[`node_modules/${name}`] ?? {};
    const [algorithm, sum] = integrity.split('-');
    bill('npm', name, version, license, algorithm === 'sha512' ? { hashes: [{ alg: 'SHA-512', content: Buffer.from(sum, 'base64').toString('hex') }] } : {});
  }
}

// the libraries of the server, as the build resolved them
if (assets !== undefined && existsSync(assets)) {
  const read = JSON.parse(readFileSync(assets, 'utf8'));
  const folders = Object.keys(read.packageFolders);
  const purls = new Map();
  for (const [id, library] of Object.entries(read.libraries).sort(([a], [b]) => a.localeCompare(b))) {
    const folder = library.type === 'package' && folders.map((root) => join(root, library.path)).find((path) => existsSync(path));
    if (folder) {
      const spec = readdirSync(folder).find((name) => name.endsWith('.nuspec'));
      const text = spec === undefined ? '' : readFileSync(join(folder, spec), 'utf8');
      const named = /<license(?:Url)?(?: [^>]*)?>([^<]*)</.exec(text)?.[1] ?? '';
      const licence = byAddress.get(named) ?? (/^(the )?MIT License/im.test(licenceIn(folder)) && standard(named) === '' ? 'MIT' : named);
      const copyright = /<copyright>([^<]*)</.exec(text)?.[1] ?? '';
      add(id.replace('/', ' '), licence, copyright, licenceIn(folder));
      const [name, version] = id.split('/');
      // the hash is that of the package's content without its signature, as lock files have it
      purls.set(name, bill('nuget', name, version, licence, { ...(/ILLink/.test(name) ? { scope: 'excluded' } : {}), properties: [{ name: 'nuget:contentHash', value: library.sha512 }] }));
    }
  }
  for (const target of Object.values(read.targets).slice(0, 1)) {
    for (const [id, { dependencies: on = {} }] of Object.entries(target)) {
      const ref = purls.get(id.split('/')[0]);
      if (ref !== undefined) {
        dependencies.push({ ref, dependsOn: Object.keys(on).map((name) => purls.get(name)).filter((purl) => purl !== undefined).sort() });
      }
    }
  }
  // the runtime's own libraries are compiled into the native program
  const runtime = /ILCompilerPackVersion="([^"]+)"/.exec(readFileSync(join(top, 'Directory.Build.targets'), 'utf8'))[1];
  bill('nuget', 'Microsoft.DotNet.ILCompiler', runtime, 'MIT', {});
}
writeFileSync(out, `Libraries that are part of Health Notes, and their licences.\n\n${parts.join(`\n\n${'-'.repeat(80)}\n\n`)}\n`);
console.log(`${out}: ${parts.length} libraries`);

const version = /<Version>([^<]+)</.exec(readFileSync(join(top, 'Directory.Build.props'), 'utf8'))[1];
const by = (key) => (a, b) => (a[key] < b[key] ? -1 : 1);
const indirect = new Set(dependencies.flatMap((one) => one.dependsOn));
const bom = {
  bomFormat: 'CycloneDX', specVersion: '1.6', version: 1,
  metadata: { component: { type: 'application', 'bom-ref': 'hnote', name: what === 'extension' ? 'health-notes' : 'hnote', version, licenses: [{ license: { id: 'MIT' } }] } },
  components: components.sort(by('purl')),
  dependencies: [{ ref: 'hnote', dependsOn: components.map((one) => one.purl).filter((purl) => !indirect.has(purl)).sort() }, ...dependencies.sort(by('ref'))],
};
const digest = createHash('sha256').update(JSON.stringify(bom)).digest('hex');
bom.serialNumber = `urn:uuid:${digest.slice(0, 8)}-${digest.slice(8, 12)}-5${digest.slice(13, 16)}-a${digest.slice(17, 20)}-${digest.slice(20, 32)}`;
writeFileSync(join(dirname(out), 'bom.cdx.json'), `${JSON.stringify(bom, null, 2)}\n`);
