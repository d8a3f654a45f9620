import * as vscode from 'vscode';
import { done, type NoteFinder } from './activeNote.js';
import type { Client } from './host.js';
import { newNonce } from './plain/nonce.js';
import { policyFor, styleHashOf } from './plain/policy.js';

const viewType = 'hnote.page';
const pauseAfterKey = 150;
const dayShape = /^\s*(\d{4}-\d{2}-\d{2})/;

/** The visit page beside the note: made by the server from what is in the editor, shown without any script of its own. */
export class PageView implements vscode.Disposable {
  private readonly listeners: vscode.Disposable[];
  private panel: vscode.WebviewPanel | undefined;
  private note: vscode.Uri | undefined;
  private styleHash: string | null | undefined;
  private timer: NodeJS.Timeout | undefined;
  /** True from a change of the text until the pause after it: a cursor that moves meanwhile is moved by the typing. */
  private typing = false;

  constructor(private readonly context: vscode.ExtensionContext, private readonly client: Client, private readonly notes: NoteFinder) {
    this.listeners = [
      vscode.commands.registerCommand('hnote.pageBeside', () => this.open()),
      vscode.window.registerWebviewPanelSerializer(viewType, { deserializeWebviewPanel: (panel, state: unknown) => this.restore(panel, state) }),
      vscode.workspace.onDidChangeTextDocument((change) => {
        if (change.document.uri.toString() === this.note?.toString() && change.contentChanges.length > 0) {
          this.typing = true;
          this.soon();
        }
      }),
      vscode.window.onDidChangeActiveTextEditor((editor) => {
        if (this.panel !== undefined && editor?.document.languageId === 'hnote' && editor.document.uri.toString() !== this.note?.toString()) {
          this.note = editor.document.uri;
          void this.update();
        }
      }),
      vscode.window.onDidChangeTextEditorSelection((change) => {
        if (change.textEditor.document.uri.toString() === this.note?.toString()) {
          this.follow(change.textEditor, !this.typing);
        }
      }),
    ];
  }

  dispose(): void {
    clearTimeout(this.timer);
    vscode.Disposable.from(...this.listeners).dispose();
    this.panel?.dispose();
  }

  /** Makes the page afresh, when one is shown. */
  refresh(): void {
    this.soon();
  }

  private async open(): Promise<void> {
    const editor = await this.notes.find();
    if (editor === null) {
      return;
    }
    this.note = editor.document.uri;
    if (this.panel === undefined) {
      this.adopt(vscode.window.createWebviewPanel(viewType, 'Page', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, { retainContextWhenHidden: true, ...this.options() }));
    } else {
      this.panel.reveal(undefined, true);
    }
    await this.update();
    this.follow(editor, true);
    if (this.client() !== undefined) {
      await done('page');
    }
  }

  /** After the window was loaded again, the page comes back for the note it was about. */
  private async restore(panel: vscode.WebviewPanel, state: unknown): Promise<void> {
    const uri = typeof state === 'object' && state !== null && 'uri' in state && typeof state.uri === 'string' ? vscode.Uri.parse(state.uri) : null;
    const note = uri === null ? null : await vscode.workspace.openTextDocument(uri).then((found) => found, () => null);
    if (note === null || this.panel !== undefined) {
      panel.dispose();
      return;
    }
    this.note = note.uri;
    panel.webview.options = this.options();
    this.adopt(panel);
    // not awaited: the editor loads the view only after this has ended, and no message arrives before
    void this.update();
  }

  private options(): vscode.WebviewOptions {
    return { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(this.context.extensionUri, 'dist', 'webview')] };
  }

  private adopt(panel: vscode.WebviewPanel): void {
    this.panel = panel;
    panel.onDidDispose(() => {
      this.panel = undefined;
      this.styleHash = undefined;
    });
  }

  private soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      this.typing = false;
      void this.update();
    }, pauseAfterKey);
  }

  private async update(): Promise<void> {
    const client = this.client();
    const note = this.note;
    if (client === undefined || note === undefined || this.panel === undefined) {
      return;
    }
    let answer: { html: string } | null;
    try {
      answer = await client.sendRequest<{ html: string } | null>('healthNotes/page', { uri: client.code2ProtocolConverter.asUri(note) });
    } catch {
      // the note changed meanwhile, or the server is starting again: the next change asks once more
      return;
    }
    const panel: vscode.WebviewPanel | undefined = this.panel;
    if (answer === null || panel === undefined || note.toString() !== this.note?.toString()) {
      return;
    }
    panel.title = `Page: ${note.path.split('/').pop() ?? ''}`;
    // the frame is made once: a later page differs only in its printed foot, and a new frame would blink with each day that is typed
    if (this.styleHash === undefined) {
      this.styleHash = styleHashOf(answer.html);
      panel.webview.html = await this.frame(this.styleHash);
    }
    await panel.webview.postMessage({ kind: 'page', html: answer.html, uri: note.toString() });
  }

  /** Marks what the page says of the line under the cursor; scrolls there only after a move. */
  private follow(editor: vscode.TextEditor, moved: boolean): void {
    const at = editor.selection.active.line;
    let day: string | null = null;
    for (let line = at; line >= 0 && day === null; line--) {
      day = dayShape.exec(editor.document.lineAt(line).text)?.[1] ?? null;
    }
    void this.panel?.webview.postMessage({ kind: 'follow', line: editor.document.lineAt(at).text, day, moved });
  }

  private async frame(styleHash: string | null): Promise<string> {
    const nonce = newNonce();
    const script = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(this.context.extensionUri, 'dist', 'webview', 'page.js'));
    return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyFor(nonce, styleHash)}">
<title>Page</title>
<style nonce="${nonce}">html, body { height: 100%; margin: 0; padding: 0; overflow: hidden; } iframe { border: 0; width: 100%; height: 100%; background: var(--vscode-editor-background); }</style>
</head>
<body>
<iframe title="The page for the clinic" sandbox="allow-same-origin"></iframe>
<script nonce="${nonce}">${new TextDecoder().decode(script).replaceAll('</script', '<\\/script')}</script>
</body>
</html>`;
  }
}
