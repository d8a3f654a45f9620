// Bundles the extension for a computer and for a browser, the server as WebAssembly where it was built (../web/build.sh), and each web view's script for the browser.
import { copyFileSync, cpSync, existsSync, writeFileSync } from 'node:fs';
import { build } from 'esbuild';

const production = process.argv.includes('--production');
const common = { bundle: true, minify: production, sourcemap: false, legalComments: 'none', logLevel: 'warning', target: 'es2022' };
await build({ ...common, entryPoints: ['src/extension.ts'], outfile: 'dist/extension.js', platform: 'node', format: 'cjs', external: ['vscode'] });
await build({ ...common, entryPoints: ['src/browser.ts'], outfile: 'dist/browser.js', platform: 'browser', format: 'cjs', external: ['vscode'], define: { 'process.env.HNOTE_TODAY': 'undefined' } });
await build({ ...common, entryPoints: ['src/wasm/node.ts'], outfile: 'dist/wasm/node.mjs', platform: 'node', format: 'esm', external: ['./_framework/*'] });
await build({ ...common, entryPoints: ['src/wasm/worker.ts'], outfile: 'dist/wasm/worker.js', platform: 'browser', format: 'iife' });
if (existsSync('../../out/web/_framework')) {
  cpSync('../../out/web/_framework', 'dist/wasm/_framework', { recursive: true });
  // its files are modules, whatever the extension's own are
  writeFileSync('dist/wasm/package.json', '{ "type": "module" }\n');
}
await build({ ...common, entryPoints: ['src/webview/page.ts', 'src/webview/count.ts'], outdir: 'dist/webview', platform: 'browser', format: 'iife' });
// What needs neither editor nor browser, for the unit tests.
await build({ ...common, minify: false, entryPoints: ['src/plain/index.ts'], outfile: 'dist/plain.mjs', platform: 'neutral', format: 'esm' });
// The invented puppy that the first steps offer to play with.
copyFileSync('../../samples/hazel-puppy.hnote', 'dist/sample.hnote');
