// A real VS Code in Chromium with the packed extension, and hands for it: what the drives have in common.
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createServer } from 'node:net';
import { join } from 'node:path';

const patience = 60_000;
export const until = async (what, condition) => {
  const end = Date.now() + patience;
  for (;;) {
    const value = await condition().catch(() => null);
    if (value) return value;
    if (Date.now() > end) throw new Error(`never came: ${what}`);
    await new Promise((go) => setTimeout(go, 50));
  }
};

/** A browser without a screen, and hands for the editor in it. What the editor complains of about the extension's views is in `messages`. */
export async function openBrowser({ vscode, pictures }) {
  const { chromium } = createRequire(join(vscode, 'package.json'))('playwright-core');
  mkdirSync(pictures, { recursive: true });
  const browser = await chromium.launch({
    executablePath: process.env.HNOTE_CHROMIUM || '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
  });
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 860 } })).newPage();
  const messages = [];
  page.on('console', (message) => { if (message.type() === 'error' && /Content Security Policy|health-?notes/i.test(message.text())) messages.push(message.text()); });
  // while a window is loaded anew the browser can't take a picture; a second later it can
  const take = (name) => page.screenshot({ path: join(pictures, `${name}.png`) });
  const picture = (name) => take(name).catch(() => new Promise((go) => setTimeout(go, 1_000)).then(() => take(name)));
  const text = async (selector) => (await page.locator(selector).allInnerTexts()).join('\n').replaceAll('\u00a0', ' ').replaceAll('\u00b7', ' ');
  const lines = () => text('.editor-group-container .monaco-editor .view-lines');
  const quick = page.locator('.quick-input-widget');
  /** Keys, pressed again where they came too early, until what they open is there. */
  const press = (keys, opened) => until(`what ${keys} opens`, async () => {
    for (const key of keys.split(' ')) await page.keyboard.press(key);
    await opened.first().waitFor({ timeout: 3_000 });
    return true;
  });
  /** A command by its name; the list is opened again while the extension is still being read. */
  const command = (name) => until(`the command ${name}`, async () => {
    const box = quick.locator('.quick-input-box input');
    await press('F1', box);
    await box.fill(`>${name}`);
    await page.locator('.quick-input-list .monaco-list-row.focused', { hasText: name.replace(/^.*: /, '') }).first().waitFor({ timeout: 3_000 }).catch(async (none) => {
      await page.keyboard.press('Escape');
      throw none;
    });
    await box.press('Enter');
    await until(`the end of ${name}`, async () => (await quick.isHidden()) || !(await box.inputValue()).startsWith('>'));
    return true;
  });
  /** The frame that the extension fills, within the editor's own frame. */
  const inside = (has) => until(`a view with ${has}`, async () => {
    for (const frame of page.frames()) {
      if (await frame.locator(has).count().catch(() => 0)) return frame;
    }
    return null;
  });
  return { browser, page, quick, text, lines, picture, press, command, inside, until, messages };
}

export const freePort = () => new Promise((done) => {
  const probe = createServer().listen(0, '127.0.0.1', () => { const { port } = probe.address(); probe.close(() => done(port)); });
});

/**
 * Starts the editor with a home of its own and its settings in the folder STATE; its profile puts STATE/bin first on the PATH, which
 * is empty. Nothing is open yet: `open(folder, file)` does that, for the home where the folder is ''.
 */
export async function openCode({ vscode, vsix, home, state, pictures, today }) {
  const entry = join(vscode, 'node_modules/code-server/out/node/entry.js');
  const own = ['--user-data-dir', join(state, 'user'), '--extensions-dir', join(state, 'extensions')];
  const settingsFile = join(state, 'user/User/settings.json');
  mkdirSync(join(state, 'user/User'), { recursive: true });
  mkdirSync(join(state, 'bin'), { recursive: true });
  const settings = {
    'workbench.startupEditor': 'none', 'workbench.tips.enabled': false, 'telemetry.telemetryLevel': 'off', 'chat.commandCenter.enabled': false,
    'files.autoSave': 'off', 'editor.minimap.enabled': false, 'workbench.editor.enablePreview': false, 'security.workspace.trust.enabled': false,
    'window.menuBarVisibility': 'hidden', 'workbench.secondarySideBar.defaultVisibility': 'hidden', 'files.exclude': { '.code': true },
  };
  const setting = (name, value) => { settings[name] = value; writeFileSync(settingsFile, JSON.stringify(settings)); };
  setting('workbench.colorTheme', 'Default Dark Modern');
  const installed = execFileSync('node', [entry, ...own, '--install-extension', vsix], { encoding: 'utf8' }).trim().split('\n').pop();
  writeFileSync(join(home, '.profile'), `export PATH="${join(state, 'bin')}:$PATH"\n`);
  const port = await freePort();
  const process_ = spawn('node', [entry, ...own, '--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry', '--disable-update-check', '--disable-workspace-trust', '--ignore-last-opened'],
    { stdio: 'ignore', env: { ...process.env, HNOTE_TODAY: today, HOME: home, SHELL: '/bin/bash' }, detached: true });
  const hands = await openBrowser({ vscode, pictures });
  const { browser, page } = hands;
  const open = (folder, file) => until('the editor', async () => {
    const where = file === undefined ? '' : `&payload=[["openFile","vscode-remote://127.0.0.1:${port}${join(folder === '' ? home : folder, file)}"]]`;
    const answer = await page.goto(`http://127.0.0.1:${port}/?${folder === '' ? 'ew=true' : `folder=${folder}`}${where}`, { timeout: 20_000 });
    return answer?.ok() && (await page.locator('.monaco-workbench').waitFor({ timeout: 20_000 }), true);
  });
  const close = async () => {
    await browser.close();
    try { process.kill(-process_.pid, 'SIGTERM'); } catch { /* it has ended */ }
  };
  return { ...hands, open, close, setting, installed };
}
