import type { ExtensionContext } from 'vscode';
import * as vscode from 'vscode';
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser';
import { withRules, type Host } from './host.js';
import { startExtension, stopExtension } from './main.js';

/** Called by an editor in a browser, when a note is opened or a command is used. */
export const activate = (context: ExtensionContext): Promise<void> => startExtension(context, browser(context));
export const deactivate = stopExtension;

const browser = (context: ExtensionContext): Host => ({
  connect: (options) => {
    const wasm = (...parts: string[]): string => vscode.Uri.joinPath(context.extensionUri, 'dist', 'wasm', ...parts).toString(true);
    const worker = new Worker(wasm('worker.js'));
    // a worker of this editor does not know its own address
    worker.postMessage({ framework: wasm('_framework', 'dotnet.js') });
    const files = new Map<string, vscode.Uri>();
    const client: LanguageClient = new LanguageClient(
      'hnote', 'Health Notes',
      // the editor's own kind of Worker is not the one that the client looks for
      async () => ({ reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) }), {
      ...options,
      middleware: { ...options.middleware, didOpen: withRules((path, bytes) => worker.postMessage({ path, bytes }), () => client) },
      // rules are looked for beside files: a note of a remote folder counts as one
      uriConverters: {
        code2Protocol: (uri) => {
          const file = uri.scheme === 'untitled' || uri.scheme === 'hnote' ? uri : uri.with({ scheme: 'file', authority: '' });
          files.set(file.toString(), uri);
          return file.toString();
        },
        protocol2Code: (text) => files.get(text) ?? vscode.Uri.parse(text),
      },
    });
    return client;
  },
  program: () => null,
  run: () => Promise.reject(new Error('no program runs in a browser')),
  keep: async (name, html) => {
    const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
    const place = await vscode.window.showSaveDialog({ ...(folder === undefined ? {} : { defaultUri: vscode.Uri.joinPath(folder, name) }), filters: { Page: ['html'] } });
    if (place !== undefined) {
      await vscode.workspace.fs.writeFile(place, new TextEncoder().encode(html));
    }
    return place ?? null;
  },
  home: undefined,
});
