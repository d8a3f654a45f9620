import * as vscode from 'vscode';
import { RevealOutputChannelOn, State, type BaseLanguageClient, type LanguageClientOptions, type Middleware } from 'vscode-languageclient';
import { NoteFinder } from './activeNote.js';
import { AttentionItem } from './attentionItem.js';
import { registerCounting } from './counting.js';
import { registerDue } from './dueList.js';
import { findingsMiddleware, registerFindings } from './findings.js';
import type { Host } from './host.js';
import { showLanguageStatus } from './languageStatus.js';
import { registerNewNote } from './notes.js';
import { PageView } from './pageView.js';
import { PetsView } from './petsView.js';
import { registerPrinting } from './print.js';
import { registerCheck } from './todaysCheck.js';

/** The language's name, as the editor knows it. */
export const language = 'hnote';

let client: BaseLanguageClient | undefined;

/** Everything that is the same in every editor. */
export async function startExtension(context: vscode.ExtensionContext, host: Host): Promise<void> {
  // the notes that the server has told its findings of, by address
  const read = new Set<string>();
  const notes = new NoteFinder(context.globalState);
  const page = new PageView(context, () => client, notes);
  const attention = new AttentionItem((note) => (client === undefined || client.state === State.Stopped ? 'none' : read.has(note.uri.toString()) ? 'done' : 'begun'));
  const status = showLanguageStatus(() => client, host);
  const forget = (): void => {
    read.clear();
    attention.show();
    status.show();
  };
  const start = async (): Promise<void> => {
    client = host.connect(clientOptions((note) => {
      read.add(note.toString());
      attention.show();
    }));
    client.onDidChangeState(forget);
    // the client itself says what went wrong; the notes can be written without it
    await client.start().catch(() => undefined);
    page.refresh();
  };
  // a client whose program did not start can't be started again: a new one is made, of what is installed now
  const startAgain = async (): Promise<void> => {
    const old = client;
    client = undefined;
    await old?.dispose().catch(() => undefined);
    forget();
    await start();
  };
  context.subscriptions.push(
    notes,
    page,
    new PetsView(() => client),
    attention,
    status.item,
    vscode.workspace.onDidCloseTextDocument((note) => read.delete(note.uri.toString())),
    ...registerNewNote(context, host),
    ...registerCheck(() => client, notes),
    registerCounting(context, notes),
    ...registerPrinting(() => client, host, notes),
    registerDue(() => client, notes),
    ...registerFindings(),
    vscode.commands.registerCommand('hnote.walkthrough', () =>
      vscode.commands.executeCommand('workbench.action.openWalkthrough', `${context.extension.id}#firstNote`, false)),
    vscode.commands.registerCommand('hnote.restartServer', startAgain),
    vscode.commands.registerCommand('hnote.showLog', () => client?.outputChannel.show()),
  );
  await start();
}

/** Called by the editor when it closes. */
export async function stopExtension(): Promise<void> {
  await client?.stop();
}

/** What ends with a blank waits for more, such as a time: taken at the end of a line, it opens the list again. */
const openAgain: NonNullable<Middleware['provideCompletionItem']> = async (note, place, context, token, next) => {
  const offered = await next(note, place, context, token);
  const items = Array.isArray(offered) ? offered : (offered?.items ?? []);
  for (const item of place.isEqual(note.lineAt(place).range.end) ? items : []) {
    if (typeof item.insertText === 'string' && item.insertText.endsWith(' ')) {
      item.command = { command: 'editor.action.triggerSuggest', title: '' };
    }
  }
  return offered;
};

function clientOptions(told: (note: vscode.Uri) => void): LanguageClientOptions {
  return {
    documentSelector: [{ language }],
    synchronize: { configurationSection: 'hnote', fileEvents: vscode.workspace.createFileSystemWatcher('**/*.hnote') },
    // the values alone: a message to WebAssembly is copied, and the editor's own object has functions
    initializationOptions: JSON.parse(JSON.stringify(vscode.workspace.getConfiguration('hnote'))) as object,
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    diagnosticPullOptions: { onChange: true, onTabs: true },
    middleware: { ...findingsMiddleware(told), provideCompletionItem: openAgain },
  };
}
