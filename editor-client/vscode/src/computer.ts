import { execFile, fork } from 'node:child_process';
import * as fs from 'node:fs';
import * as os from 'node:os';
import * as path from 'node:path';
import * as vscode from 'vscode';
import { IPCMessageReader, IPCMessageWriter, LanguageClient } from 'vscode-languageclient/node';
import { withRules, type Host } from './host.js';
import { candidates } from './plain/serverPlaces.js';

/** An editor on a computer: it runs the program `hnote`, or, where there is none for its system, the same server as WebAssembly. */
export const computer = (context: vscode.ExtensionContext): Host => ({
  connect: (options) => {
    const server = findServer(context);
    if (server !== null) {
      return new LanguageClient('hnote', 'Health Notes', { command: server, args: ['lsp'] }, options);
    }
    let hand = (_path: string, _bytes: Uint8Array): void => { /* not started yet */ };
    const client: LanguageClient = new LanguageClient('hnote', 'Health Notes', async () => {
      const child = fork(path.join(context.extensionPath, 'dist', 'wasm', 'node.mjs'), { serialization: 'advanced', execArgv: [] });
      context.subscriptions.push({ dispose: () => child.kill() });
      hand = (file, bytes) => { child.send({ path: file, bytes }); };
      return { reader: new IPCMessageReader(child), writer: new IPCMessageWriter(child) };
    }, { ...options, middleware: { ...options.middleware, didOpen: withRules((file, bytes) => hand(file, bytes), () => client) } });
    return client;
  },
  program: () => findServer(context),
  run: (program, args) => new Promise((resolve, reject) => {
    execFile(program, [...args], { timeout: 30_000, maxBuffer: 16 * 1024 * 1024 }, (error, output, errors) => {
      if (error === null) {
        resolve(output);
      } else {
        reject(new Error(errors.trim().split('\n')[0] ?? error.message));
      }
    });
  }),
  // health data: in a folder that only this user can read
  keep: async (name, html) => {
    const file = path.join(fs.mkdtempSync(path.join(os.tmpdir(), 'hnote-')), name);
    await fs.promises.writeFile(file, html, { mode: 0o600 });
    return vscode.Uri.file(file);
  },
  home: vscode.Uri.file(os.homedir()),
});

function findServer(context: vscode.ExtensionContext): string | null {
  const setting = vscode.workspace.getConfiguration('hnote').get<string>('server.path', '').trim();
  const places = candidates({
    extensionFolder: context.extensionPath,
    platform: process.platform,
    arch: process.arch,
    setting: vscode.workspace.isTrusted ? setting : '',
    path: process.env['PATH'] ?? '',
  });
  return places.find(isProgram) ?? null;
}

function isProgram(file: string): boolean {
  try {
    fs.accessSync(file, fs.constants.X_OK);
    return fs.statSync(file).isFile();
  } catch {
    return false;
  }
}
