import * as vscode from 'vscode';

const lastKey = 'lastNote';

/** Finds the note that a command is about, wherever the focus is. */
export class NoteFinder implements vscode.Disposable {
  private readonly listener: vscode.Disposable;

  constructor(private readonly memory: vscode.Memento) {
    const keep = (editor: vscode.TextEditor | undefined): void => {
      if (editor?.document.languageId === 'hnote') {
        void memory.update(lastKey, editor.document.uri.toString());
      }
    };
    keep(vscode.window.activeTextEditor);
    this.listener = vscode.window.onDidChangeActiveTextEditor(keep);
  }

  dispose(): void {
    this.listener.dispose();
  }

  /**
   * The note in front; else one in sight, in a tab, in the folder, or the last one used. Null, after an offer to make one,
   * where there is none: a command never ends without a word.
   */
  async find(): Promise<vscode.TextEditor | null> {
    const seen = [vscode.window.activeTextEditor, ...vscode.window.visibleTextEditors].find((editor) => editor?.document.languageId === 'hnote');
    if (seen !== undefined) {
      return seen;
    }
    const found = await this.elsewhere();
    if (found === 'stopped') {
      return null;
    }
    if (found !== null) {
      return vscode.window.showTextDocument(found, { preview: false });
    }
    const make = 'New note';
    const sample = 'Try with a sample';
    const chosen = await vscode.window.showInformationMessage('There is no health note yet. Make one, or play with an invented one.', make, sample);
    if (chosen !== undefined) {
      await vscode.commands.executeCommand(chosen === make ? 'hnote.newNote' : 'hnote.openSample');
    }
    return null;
  }

  private async elsewhere(): Promise<vscode.Uri | 'stopped' | null> {
    const last = this.memory.get<string>(lastKey);
    const open = vscode.window.tabGroups.all.flatMap((group) => group.tabs).map((tab) => tab.input)
      .flatMap((input) => (input instanceof vscode.TabInputText && isNote(input.uri) ? [input.uri] : []));
    if (open.length > 0) {
      return open.find((uri) => uri.toString() === last) ?? open[0]!;
    }
    const inFolder = vscode.workspace.workspaceFolders === undefined ? [] : await vscode.workspace.findFiles('**/*.hnote', null, 50);
    const known = inFolder.find((uri) => uri.toString() === last);
    if (known !== undefined || inFolder.length === 1) {
      return known ?? inFolder[0]!;
    }
    if (inFolder.length > 1) {
      const chosen = await vscode.window.showQuickPick(
        inFolder.map((uri) => ({ label: uri.path.split('/').pop() ?? '', description: vscode.workspace.asRelativePath(uri), uri })).sort((a, b) => a.description.localeCompare(b.description)),
        { title: 'Which note?' },
      );
      return chosen?.uri ?? 'stopped';
    }
    const used = last === undefined ? null : vscode.Uri.parse(last);
    return used !== null && used.scheme === 'file' && (await isThere(used)) ? used : null;
  }
}

/** True where a file or folder of this name exists. */
export const isThere = (uri: vscode.Uri): Thenable<boolean> => vscode.workspace.fs.stat(uri).then(() => true, () => false);

const isNote = (uri: vscode.Uri): boolean =>
  uri.path.endsWith('.hnote') || vscode.workspace.textDocuments.some((note) => note.languageId === 'hnote' && note.uri.toString() === uri.toString());

/** Ticks a step of the first steps: only what was done is ticked. */
export const done = (step: 'read' | 'note' | 'check' | 'count' | 'page'): Thenable<unknown> =>
  vscode.commands.executeCommand('setContext', `hnote.done.${step}`, true);
