/** How many findings there are of each strength, as the editor's own severities: 0 error, 1 warning, 2 information, 3 hint. */
export interface Attention {
  readonly text: string;
  readonly tooltip: string;
  readonly strongest: 'error' | 'warning' | 'none';
  /** Grows with what is found, the graver above all of the lesser: the bar waits before it shows more. */
  readonly weight: number;
}

/** How far the reading of a note is: 'none' where no checker runs. */
export type Reading = 'none' | 'begun' | 'done';

/** What the status bar says of a note that is not read: nothing that could be taken for good news. */
export const unreadAttention = (reading: 'none' | 'begun'): Attention =>
  reading === 'none'
    ? { text: '$(circle-slash) not checked', tooltip: 'The checker does not run.\nClick to start it, or to see how to install it.', strongest: 'none', weight: 0 }
    : { text: '$(sync) reading', tooltip: 'The note is being read.', strongest: 'none', weight: 0 };

const most = 1_000;

/** What the status bar says. Where nothing was found it says only that: a note holds no more than was written. */
export function attentionOf(findings: readonly { readonly severity: number; readonly message: string }[]): Attention {
  if (findings.some((f) => f.message.startsWith('Not checked: '))) {
    return { text: '$(circle-slash) not checked', tooltip: 'hnote could not read a change of this note.\nClose it and open it again.', strongest: 'none', weight: 0 };
  }
  const urgent = findings.filter((f) => f.severity === 0 && f.message.startsWith('Phone now: ')).length;
  const call = findings.filter((f) => f.severity === 0).length - urgent;
  const unread = findings.filter((f) => f.severity === 1).length;
  const watch = findings.filter((f) => f.severity === 2).length;
  const parts = [
    urgent > 0 ? `$(error) ${urgent} to phone about now` : '',
    call > 0 ? `$(warning) ${call} to phone about` : '',
    watch > 0 ? `$(info) ${watch} to keep an eye on` : '',
    unread > 0 ? `$(question) ${unread} not understood` : '',
  ].filter((part) => part !== '');
  return {
    text: parts.length === 0 ? '$(note) no findings' : parts.join('  '),
    tooltip: `What this note says now, by what is written in it. A veterinarian decides.\nClick for the list.`,
    strongest: urgent > 0 ? 'error' : call > 0 ? 'warning' : 'none',
    weight: ((urgent * most + call) * most + unread) * most + watch,
  };
}
