import * as vscode from 'vscode';
import { LanguageClient, RevealOutputChannelOn, State, type LanguageClientOptions } from 'vscode-languageclient/node';
import { NoteFinder } from './activeNote.js';
import { AttentionItem } from './attentionItem.js';
import { registerCounting } from './counting.js';
import { registerDue } from './dueList.js';
import { findingsMiddleware, registerFindings } from './findings.js';
import { registerNewNote } from './notes.js';
import { PageView } from './pageView.js';
import { PetsView } from './petsView.js';
import { registerPrinting } from './print.js';
import { findServer, sayServerIsMissing } from './server.js';
import { registerCheck } from './todaysCheck.js';

/** The language's name, as the editor knows it. */
export const language = 'hnote';

let client: LanguageClient | undefined;

/** Called by the editor when a note is opened or a command is used. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  let server: string | null = null;
  // the notes that the server has told its findings of, by address
  const read = new Set<string>();
  const notes = new NoteFinder(context.globalState);
  const page = new PageView(context, () => client, notes);
  const attention = new AttentionItem((note) => (client === undefined || client.state === State.Stopped ? 'none' : read.has(note.uri.toString()) ? 'done' : 'begun'));
  const forget = (): void => {
    read.clear();
    attention.show();
  };
  const start = async (): Promise<void> => {
    server = findServer(context);
    if (server === null) {
      void sayServerIsMissing();
      return;
    }
    client = new LanguageClient('hnote', 'Health Notes', { command: server, args: ['lsp'] }, clientOptions((note) => {
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
    new PetsView(() => server),
    attention,
    vscode.workspace.onDidCloseTextDocument((note) => read.delete(note.uri.toString())),
    ...registerNewNote(context),
    ...registerCheck(() => client, notes),
    registerCounting(context, notes),
    ...registerPrinting(() => server, notes),
    registerDue(() => server, notes),
    ...registerFindings(() => server),
    vscode.commands.registerCommand('healthNotes.walkthrough', () =>
      vscode.commands.executeCommand('workbench.action.openWalkthrough', `${context.extension.id}#firstNote`, false)),
    vscode.commands.registerCommand('healthNotes.restartServer', startAgain),
  );
  await start();
}

/** Called by the editor when it closes. */
export async function deactivate(): Promise<void> {
  await client?.stop();
}

function clientOptions(told: (note: vscode.Uri) => void): LanguageClientOptions {
  return {
    documentSelector: [{ language }],
    synchronize: { configurationSection: 'hnote', fileEvents: vscode.workspace.createFileSystemWatcher('**/*.hnote') },
    initializationOptions: vscode.workspace.getConfiguration('hnote'),
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    diagnosticPullOptions: { onChange: true, onTabs: true },
    middleware: findingsMiddleware(told),
  };
}
