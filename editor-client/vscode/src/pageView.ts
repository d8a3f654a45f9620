import { randomBytes } from 'node:crypto';
import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { activeNote } from './activeNote.js';
import { policyFor, styleHashOf } from './plain/policy.js';

const pauseAfterKey = 150;
const dayShape = /^\s*(\d{4}-\d{2}-\d{2})/;

/** The visit page beside the note: made by the server from what is in the editor, shown without any script of its own. */
export class PageView implements vscode.Disposable {
  private readonly listeners: vscode.Disposable[];
  private panel: vscode.WebviewPanel | undefined;
  private note: vscode.Uri | undefined;
  private styleHash: string | null | undefined;
  private timer: NodeJS.Timeout | undefined;

  constructor(private readonly context: vscode.ExtensionContext, private readonly client: () => LanguageClient | undefined) {
    this.listeners = [
      vscode.commands.registerCommand('healthNotes.pageBeside', () => this.open()),
      vscode.workspace.onDidChangeTextDocument((change) => {
        if (change.document.uri.toString() === this.note?.toString()) {
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
          this.follow(change.textEditor);
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
    const editor = activeNote();
    if (editor === null) {
      return;
    }
    this.note = editor.document.uri;
    if (this.panel === undefined) {
      this.panel = vscode.window.createWebviewPanel('healthNotes.page', 'Page', { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true }, {
        enableScripts: true,
        localResourceRoots: [vscode.Uri.joinPath(this.context.extensionUri, 'dist', 'webview')],
        retainContextWhenHidden: true,
      });
      this.panel.onDidDispose(() => {
        this.panel = undefined;
        this.styleHash = undefined;
      });
    }
    await this.update();
    this.follow(editor);
  }

  private soon(): void {
    if (this.panel !== undefined) {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => void this.update(), pauseAfterKey);
    }
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
    const hash = styleHashOf(answer.html);
    if (this.styleHash === undefined || hash !== this.styleHash) {
      this.styleHash = hash;
      panel.webview.html = await this.frame(hash);
    }
    await panel.webview.postMessage({ kind: 'page', html: answer.html, uri: note.toString() });
  }

  private follow(editor: vscode.TextEditor): void {
    const at = editor.selection.active.line;
    let day: string | null = null;
    for (let line = at; line >= 0 && day === null; line--) {
      day = dayShape.exec(editor.document.lineAt(line).text)?.[1] ?? null;
    }
    void this.panel?.webview.postMessage({ kind: 'follow', line: editor.document.lineAt(at).text, day });
  }

  private async frame(styleHash: string | null): Promise<string> {
    const nonce = randomBytes(16).toString('base64');
    const script = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(this.context.extensionUri, 'dist', 'webview', 'page.js'));
    return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyFor(nonce, styleHash)}">
<title>Page</title>
<style nonce="${nonce}">html, body { height: 100%; margin: 0; padding: 0; overflow: hidden; } iframe { border: 0; width: 100%; height: 100%; background: Canvas; }</style>
</head>
<body>
<iframe title="The page for the clinic" sandbox="allow-same-origin"></iframe>
<script nonce="${nonce}">${new TextDecoder().decode(script).replaceAll('</script', '<\\/script')}</script>
</body>
</html>`;
  }
}
