import * as vscode from 'vscode';
import { State, type BaseLanguageClient, type LanguageClientOptions, type Middleware } from 'vscode-languageclient';

/** What differs between an editor on a computer and one in a browser. */
export interface Host {
  /** A client of the best server that there is, not started yet. */
  connect(options: LanguageClientOptions): BaseLanguageClient;
  /** The program `hnote` on this computer; null where there is none. */
  program(): string | null;
  /** Runs it, and gives what it printed. */
  run(program: string, args: readonly string[]): Promise<string>;
  /** Puts a paper where only this user can read it, to be opened or printed; null where the user chose no place. */
  keep(name: string, html: string): Promise<vscode.Uri | null>;
  /** Where a new note is offered to be kept. */
  readonly home: vscode.Uri | undefined;
}

/** The client as the parts of the extension see it; undefined while there is none. */
export type Client = () => BaseLanguageClient | undefined;

/** Asks the server of its own kinds of request; null where it does not run, or has no answer. */
export async function askServer<T>(client: Client, method: string, params: object): Promise<T | null> {
  const one = client();
  if (one === undefined || one.state === State.Stopped) {
    return null;
  }
  await one.start();
  return one.sendRequest<T | null>(method, params).catch(() => null);
}

/**
 * The server that is part of the extension as WebAssembly has no disk: the clinic's rules that lie over a note, in its folder or one
 * above it, are handed to it. Without them a limit of the clinic would be missed without a word. The note itself does not wait for
 * them: what is asked about a note that the server does not know yet has an empty answer.
 */
export function withRules(hand: (path: string, bytes: Uint8Array) => void, client: () => BaseLanguageClient): NonNullable<Middleware['didOpen']> {
  const known = new Set<string>();
  return async (note, next) => {
    await next(note);
    for (let folder = vscode.Uri.joinPath(note.uri, '..'), up = 0; up < 16 && note.uri.scheme !== 'untitled' && !known.has(folder.toString()); folder = vscode.Uri.joinPath(folder, '..'), up++) {
      known.add(folder.toString());
      for (const [name] of await vscode.workspace.fs.readDirectory(folder).then((all) => all, () => [])) {
        const file = vscode.Uri.joinPath(folder, name);
        const bytes = name.endsWith('.hnote-rules') ? await vscode.workspace.fs.readFile(file).then((read) => read, () => null) : null;
        if (bytes !== null) {
          hand(file.path, bytes);
          // what was read without the rules is read again
          await client().sendNotification('textDocument/didSave', { textDocument: { uri: client().code2ProtocolConverter.asUri(file) } });
        }
      }
    }
  };
}
