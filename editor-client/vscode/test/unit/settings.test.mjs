// The settings of the extension against those that the server reads.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

const here = (path) => readFileSync(new URL(path, import.meta.url), 'utf8');

test('every setting that the server reads is offered under its name, and no other', () => {
  const source = here('../../../../server/LanguageServer/Convert/ClientSettings.cs');
  const top = [...source.matchAll(/(?:Text|Switch)\(settings, "(\w+)"\)/g)].map((match) => `hnote.${match[1]}`);
  const hints = [...source.matchAll(/Switch\(hints, "(\w+)"\)/g)].map((match) => `hnote.hints.${match[1]}`);
  const offered = Object.keys(JSON.parse(here('../../package.json')).contributes.configuration.properties).filter((name) => !['hnote.server.path', 'hnote.trace.server'].includes(name));
  assert.ok(hints.length > 0);
  assert.deepEqual(offered.sort(), [...top, ...hints].sort());
});

test('every text of the manifest is there, and none is left over', () => {
  const used = new Set([...here('../../package.json').matchAll(/%([\w.]+)%/g)].map((match) => match[1]));
  assert.deepEqual([...used].sort(), Object.keys(JSON.parse(here('../../package.nls.json'))).sort());
});

test('every kind of word that the server marks has a name and a colour', () => {
  const legend = here('../../../../server/Features/Tokens/TokenLegend.cs');
  const marks = /Modifiers \{ get; \} =\s*\[([^\]]*)\]/.exec(legend)[1].match(/\w+/g).filter((mark) => mark !== 'declaration');
  const { semanticTokenModifiers, semanticTokenScopes } = JSON.parse(here('../../package.json')).contributes;
  assert.deepEqual(semanticTokenModifiers.map((one) => one.id), marks);
  assert.deepEqual(marks.filter((mark) => !Object.keys(semanticTokenScopes[0].scopes).some((scope) => scope.endsWith(`.${mark}`))), []);
});
