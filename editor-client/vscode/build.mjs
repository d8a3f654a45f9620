// Bundles the extension for Node, and each web view's script for the browser.
import { copyFileSync } from 'node:fs';
import { build } from 'esbuild';

const production = process.argv.includes('--production');
const common = { bundle: true, minify: production, sourcemap: false, legalComments: 'none', logLevel: 'warning', target: 'es2022' };
await build({ ...common, entryPoints: ['src/extension.ts'], outfile: 'dist/extension.js', platform: 'node', format: 'cjs', external: ['vscode'] });
await build({ ...common, entryPoints: ['src/webview/page.ts', 'src/webview/count.ts'], outdir: 'dist/webview', platform: 'browser', format: 'iife' });
// What needs neither editor nor browser, for the unit tests.
await build({ ...common, minify: false, entryPoints: ['src/plain/index.ts'], outfile: 'dist/plain.mjs', platform: 'neutral', format: 'esm' });
// The invented puppy that the first steps offer to play with.
copyFileSync('../../samples/hazel-puppy.hnote', 'dist/sample.hnote');
