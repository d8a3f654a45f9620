import * as vscode from 'vscode';
import { dueOf, type DueItem } from './dueList.js';
import type { Client } from './host.js';
import { attentionOf } from './plain/attention.js';
import { dayInWords, petRow, type PetRow } from './plain/pets.js';
import { today } from './today.js';

const pause = 1_000;
const mostNotes = 200;

interface Pet extends PetRow { readonly uri: vscode.Uri; readonly next: DueItem | undefined }
interface Detail { readonly pet: Pet; readonly label: string; readonly icon: string; readonly line: number }
type Node = { readonly pet: Pet } | Detail;

/** The pets of the folder: what needs attention, what is due, the last check; choosing a row opens the note there. */
export class PetsView implements vscode.TreeDataProvider<Node>, vscode.Disposable {
  private readonly changed = new vscode.EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.changed.event;
  private readonly listeners: vscode.Disposable[];
  private timer: NodeJS.Timeout | undefined;

  constructor(private readonly client: Client) {
    const files = vscode.workspace.createFileSystemWatcher('**/*.hnote');
    this.listeners = [
      this.changed, files,
      files.onDidChange(() => this.soon()), files.onDidCreate(() => this.soon()), files.onDidDelete(() => this.soon()),
      vscode.languages.onDidChangeDiagnostics((change) => change.uris.some((uri) => uri.path.endsWith('.hnote')) && this.soon()),
      vscode.window.registerTreeDataProvider('hnote.pets', this),
    ];
  }

  dispose(): void {
    clearTimeout(this.timer);
    vscode.Disposable.from(...this.listeners).dispose();
  }

  getTreeItem(node: Node): vscode.TreeItem {
    return 'label' in node ? detail(node) : top(node.pet);
  }

  async getChildren(node?: Node): Promise<Node[]> {
    return node === undefined ? (await this.pets()).map((pet) => ({ pet })) : 'label' in node ? [] : details(node.pet);
  }

  private soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.changed.fire(undefined), pause);
  }

  private async pets(): Promise<Pet[]> {
    const notes = await vscode.workspace.findFiles('**/*.hnote', undefined, mostNotes);
    const pets = await Promise.all(notes.map(async (uri) => {
      const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
      return { uri, next: (await dueOf(this.client, uri, text))?.[0], ...petRow(text, uri.path.split('/').pop() ?? '') };
    }));
    return pets.sort((a, b) => a.name.localeCompare(b.name));
  }
}

function found(pet: Pet): ReturnType<typeof attentionOf> {
  return attentionOf(vscode.languages.getDiagnostics(pet.uri).filter((one) => one.source === 'hnote'));
}

function top(pet: Pet): vscode.TreeItem {
  const { strongest, text } = found(pet);
  const item = new vscode.TreeItem(pet.name, vscode.TreeItemCollapsibleState.Expanded);
  item.resourceUri = pet.uri;
  item.description = text.replace(/\$\([a-z-]+\) ?/g, '').replaceAll('  ', ', ');
  item.iconPath = strongest === 'error' ? new vscode.ThemeIcon('error', new vscode.ThemeColor('list.errorForeground'))
    : strongest === 'warning' ? new vscode.ThemeIcon('warning', new vscode.ThemeColor('list.warningForeground')) : new vscode.ThemeIcon('note');
  item.command = { command: 'vscode.open', title: 'Open', arguments: [pet.uri] };
  item.contextValue = 'pet';
  return item;
}

function details(pet: Pet): Node[] {
  return [
    ...(pet.next === undefined ? [] : [{ pet, label: `${pet.next.what}: ${pet.next.when}`, icon: 'calendar', line: pet.next.line }]),
    { pet, label: pet.lastCheck === null ? 'No check yet' : `Last check ${dayInWords(pet.lastCheck, today())}`, icon: 'checklist', line: -1 },
  ];
}

function detail(node: Detail): vscode.TreeItem {
  const item = new vscode.TreeItem(node.label);
  item.iconPath = new vscode.ThemeIcon(node.icon);
  const selection = node.line < 0 ? undefined : new vscode.Range(node.line, 0, node.line, 0);
  item.command = { command: 'vscode.open', title: 'Open', arguments: [node.pet.uri, { selection }] };
  return item;
}
