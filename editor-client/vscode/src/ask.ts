import * as vscode from 'vscode';

const afterFirstSteps = 1_100;

/** One question of several: its choices by what is typed. */
export interface Question {
  readonly placeholder: string;
  readonly choices: (typed: string) => readonly Choice[];
}

export interface Choice extends vscode.QuickPickItem {
  readonly value: string;
}

/**
 * Asks one question after another in one box that is never hidden in between: where it is, another part of the window takes
 * the keyboard. Returns the answers, or null when the user stopped.
 */
export async function askInTurn(title: string, questions: readonly Question[]): Promise<readonly string[] | null> {
  // the tab of the first steps has no input that the editor tells of; it takes the focus again 0.8 s after its button was pressed
  const front = vscode.window.tabGroups.activeTabGroup.activeTab;
  if (front !== undefined && front.input === undefined) {
    await new Promise((go) => setTimeout(go, afterFirstSteps));
  }
  const box = vscode.window.createQuickPick<Choice>();
  const answers: string[] = [];
  const question = (): Question => questions[answers.length]!;
  const show = (): void => {
    box.title = `${title} (${answers.length + 1} of ${questions.length})`;
    box.placeholder = question().placeholder;
    box.buttons = answers.length === 0 ? [] : [vscode.QuickInputButtons.Back];
    box.value = '';
    box.items = question().choices('');
  };
  box.ignoreFocusOut = true;
  return new Promise((resolve) => {
    box.onDidChangeValue((typed) => {
      box.items = question().choices(typed);
    });
    box.onDidTriggerButton(() => {
      answers.pop();
      show();
    });
    box.onDidAccept(() => {
      // the list may be a few letters behind what was typed
      const offered = question().choices(box.value);
      const chosen = offered.length === 1 ? offered[0] : box.activeItems[0];
      if (chosen === undefined || chosen.value === '') {
        return;
      }
      answers.push(chosen.value);
      if (answers.length < questions.length) {
        show();
      } else {
        resolve(answers);
        box.dispose();
      }
    });
    box.onDidHide(() => {
      resolve(null);
      box.dispose();
    });
    show();
    box.show();
  });
}
