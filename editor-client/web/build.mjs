// Bundles the page, its two workers, and the list of files that work without a network: node build.mjs SERVER OUT
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { build } from 'esbuild';

const [server, out] = process.argv.slice(2);
const common = { bundle: true, minify: true, legalComments: 'none', logLevel: 'warning', target: 'es2022', format: 'esm' };
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
cpSync('static', out, { recursive: true });
cpSync('../vscode/images/icon.png', join(out, 'icon.png'));
cpSync(join(server, 'wwwroot', '_framework'), join(out, '_framework'), { recursive: true });
await build({ ...common, entryPoints: ['src/main.ts'], outfile: join(out, 'main.js') });
await build({ ...common, entryPoints: ['src/worker.ts'], outfile: join(out, 'worker.js'), external: ['./_framework/*'] });

const files = (folder) => readdirSync(folder).flatMap((name) => (statSync(join(folder, name)).isDirectory() ? files(join(folder, name)) : [join(folder, name)]));
const all = files(out).sort();
const version = createHash('sha256').update(all.map((file) => readFileSync(file)).join()).digest('hex').slice(0, 12);
const list = ['./', ...all.map((file) => relative(out, file).replaceAll('\\', '/'))];
await build({ ...common, format: 'iife', entryPoints: ['src/sw.ts'], outfile: join(out, 'sw.js'), define: { FILES: JSON.stringify(list), VERSION: JSON.stringify(version) } });
