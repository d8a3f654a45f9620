import assert from 'node:assert/strict';
import { test } from 'node:test';
import * as plain from '../../dist/plain.mjs';

const sleep = plain.countKinds[0];

test('a count is written as it was counted, by whatever clock', () => {
  let count = plain.start(30, 1_000);
  for (let i = 1; i <= 12; i++) count = plain.beat(count, 1_000 + i * 2_000);
  assert.equal(plain.lineOf(sleep, count), 'rr 12/30s asleep');
  assert.equal(plain.isOver(count, 30_999), false);
  assert.equal(plain.isOver(count, 31_000), true);
});

test('a tap too many is taken back, and the rate follows', () => {
  const count = { seconds: 30, startedAt: 0, beats: 12 };
  assert.equal(plain.rateOf(plain.undo(count)), 22);
  assert.equal(plain.undo({ ...count, beats: 0 }).beats, 0);
});

test('a press after the time is up counts for nothing', () => {
  assert.equal(plain.beat(plain.beat(plain.start(15, 0), 14_999), 15_000).beats, 1);
});

test('heart beats have no state', () => assert.equal(plain.lineOf(plain.countKinds[2], { seconds: 15, startedAt: 0, beats: 18 }), 'hr 18/15s'));

const note = ['pet Marlow', 'species dog', '', '2026-11-24 log', '  pee', '', '2026-11-25 check', '  gums pink', ''];
const placed = (cursor, today) => plain.placeObservation(note, cursor, 'hr 18/15s', today);

test('an observation goes below the cursor within today, into a blank line, else to the end', () => {
  assert.deepEqual(placed(7, '2026-11-25'), { line: 7, fills: false, text: '  hr 18/15s' });
  assert.deepEqual(placed(8, '2026-11-25'), { line: 8, fills: true, text: '  hr 18/15s' });
  assert.deepEqual(placed(0, '2026-11-25'), { line: 7, fills: false, text: '  hr 18/15s' });
  assert.deepEqual(placed(4, '2026-11-25'), { line: 7, fills: false, text: '  hr 18/15s' });
});

test('an observation does not come between a line and the words below it', () => {
  const lines = ['2026-11-25 check', '  ear L brown wax', '    > Since the swim.', '    > Smells.', '  gums pink'];
  assert.equal(plain.placeObservation(lines, 1, 'hr 18/15s', '2026-11-25').line, 3);
  assert.equal(plain.placeObservation(lines, 2, 'hr 18/15s', '2026-11-25').line, 3);
  assert.equal(plain.placeObservation(lines, 4, 'hr 18/15s', '2026-11-25').line, 4);
});

test('a day without an entry gets one', () => {
  assert.deepEqual(placed(4, '2026-11-26'), { line: 7, fills: false, text: '\n2026-11-26\n  hr 18/15s' });
  assert.deepEqual(plain.placeObservation([''], 0, 'hr 18/15s', '2026-11-26'), { line: -1, fills: false, text: '2026-11-26\n  hr 18/15s' });
});

test('a count takes the place of the line that waits for it', () => {
  const lines = ['2026-11-25 check', '  # rr asleep', '  # hr', '  gums pink', '  hr 18/15s', '', '2026-11-20', '  hr'];
  assert.deepEqual(plain.placeObservation(lines, 3, 'rr 8/30s asleep', '2026-11-25'), { line: 1, fills: true, text: '  rr 8/30s asleep' });
  assert.deepEqual(plain.placeObservation(lines, 3, 'hr 17/15s', '2026-11-25'), { line: 2, fills: true, text: '  hr 17/15s' });
  assert.deepEqual(plain.placeObservation(['2026-11-25', '  hr', '  hr '], 2, 'hr 17/15s', '2026-11-25'), { line: 2, fills: true, text: '  hr 17/15s' });
  assert.deepEqual(plain.placeObservation(['2026-11-25', '  hr 16/15s'], 1, 'hr 17/15s', '2026-11-25'), { line: 1, fills: false, text: '  hr 17/15s' });
});

test('the page follows the line that shares the rare words', () => {
  const texts = ['Gums pink 2026-11-25', 'Ear L brown wax 2026-11-25', 'Ear L brown wax 2026-10-25', 'Weight 21.4kg'];
  assert.equal(plain.bestMatch('  ear L brown wax', '2026-10-25', texts), 2);
  assert.equal(plain.bestMatch('  weight 21.4kg', '2026-11-25', texts), 3);
  assert.equal(plain.bestMatch('  stool soft', '2026-11-25', texts), -1);
  assert.equal(plain.bestMatch('   ', null, texts), -1);
});

test('the frame allows no script but its own and no request', () => {
  const policy = plain.policyFor('abc', plain.styleHashOf("style-src 'sha256-x1+/='; img-src data:"));
  assert.match(policy, /default-src 'none'; script-src 'nonce-abc'; style-src 'nonce-abc' 'sha256-x1\+\/='/);
  assert.doesNotMatch(policy, /unsafe|https?:|connect-src/);
});

test('the status bar tells what is urgent from what was not understood', () => {
  const told = plain.attentionOf([{ severity: 0, message: 'Phone now: x' }, { severity: 1, message: 'y' }, { severity: 0, message: 'z' }, { severity: 3, message: 'q' }]);
  assert.equal(told.text, '$(error) 1 to phone about now  $(warning) 1 to phone about  $(question) 1 not understood');
  assert.equal(told.strongest, 'error');
  assert.equal(plain.attentionOf([]).strongest, 'none');
  assert.ok(told.weight > plain.attentionOf([{ severity: 0, message: 'Phone now: x' }, { severity: 0, message: 'z' }, { severity: 2, message: 'w' }]).weight);
  assert.equal(plain.attentionOf([]).weight, 0);
});

test('a note that is not read is never said to be free of findings', () => {
  for (const reading of ['none', 'begun']) assert.doesNotMatch(plain.unreadAttention(reading).text, /no findings|\d/);
  assert.equal(plain.attentionOf([{ severity: 1, message: 'Not checked: x' }]).text, '$(circle-slash) not checked');
});

test('a finding is accepted until a day that exists, with its reason', () => {
  assert.deepEqual(plain.acceptDates('2026-11-30', '').map((one) => one.date), ['2026-12-30', '2027-02-28', '2027-11-30']);
  assert.deepEqual(plain.acceptDates('2026-11-30', ' 2027-01-05').map((one) => one.date), ['2027-01-05']);
  assert.equal(plain.acceptedLine('accept lump lump L-flank until 2026-12-30\n', '2027-02-28', 'seen # by the vet'), 'accept lump lump L-flank until 2027-02-28 seen by the vet\n');
});

test('a pet is shown with its name and its last check that says something', () => {
  assert.deepEqual(plain.petRow('pet Marlow # old\n2026-10-01 check\n  gums pink\n2026-11-01 log\n  ate all\n2026-11-20 check\n  # gums\n', 'a.hnote'), { name: 'Marlow', lastCheck: '2026-10-01' });
  assert.deepEqual(plain.petRow('species dog\n', 'a.hnote'), { name: 'a.hnote', lastCheck: null });
  assert.deepEqual(['2026-10-01', '2025-10-01'].map((day) => plain.dayInWords(day, '2026-11-25')), ['1 Oct', '1 Oct 2025']);
});

test('a file is named after the pet', () => {
  assert.equal(plain.fileNameOf('Pebble', 1), 'pebble.hnote');
  assert.equal(plain.fileNameOf(' Mrs. Zoë / Tom ', 2), 'mrs-zoe-tom-2.hnote');
  assert.equal(plain.fileNameOf('../..', 1), 'pet.hnote');
  assert.equal(plain.fileNameOf('Łapa', 1), 'łapa.hnote');
});

test('today is the clock, unless a test sets it', () => {
  const noon = new Date(2026, 10, 5, 12);
  assert.equal(plain.todayOf(noon, undefined), '2026-11-05');
  assert.equal(plain.todayOf(noon, 'soon'), '2026-11-05');
  assert.equal(plain.todayOf(noon, '2026-11-25'), '2026-11-25');
});

test('the bundled server comes first, then the setting, then the PATH', () => {
  assert.deepEqual(
    plain.candidates({ extensionFolder: '/x', platform: 'linux', arch: 'x64', setting: '/s/hnote', path: '/a:/b/' }),
    ['/x/server/linux-x64/hnote', '/s/hnote', '/a/hnote', '/b/hnote']);
  assert.deepEqual(
    plain.candidates({ extensionFolder: 'C:\\x', platform: 'win32', arch: 'x64', setting: '', path: 'C:\\a' }),
    ['C:\\x\\server\\win32-x64\\hnote.exe', 'C:\\a\\hnote.exe']);
});
