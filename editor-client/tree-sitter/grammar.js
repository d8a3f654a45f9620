// A health note by the shape of its lines. It knows no vocabulary but the words whose rest is the writer's own: what a word means
// is the server's to say, and its semantic tokens lie over these colours. Every text has a tree without an error.
const blank = /[ \t\f\v\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff]/;

// as they are written: nov, Nov, november, November
const months = [...new Set(['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december', 'sept']
  .flatMap((name) => [name.slice(0, 3), name]).flatMap((name) => [name, name[0].toUpperCase() + name.slice(1)]))];

module.exports = grammar({
  name: 'hnote',
  extras: () => [blank],
  word: ($) => $.word,
  conflicts: ($) => [[$.opening], [$.entry], [$._day, $._said], [$._day, $._part], [$._day, $._behind_day]],

  rules: {
    note: ($) => seq(optional($.opening), repeat($.entry)),

    opening: ($) => repeat1(choice($._other_line, alias($._line, $.opening_line))),

    entry: ($) => seq($.heading, repeat(choice($._other_line, alias($._line, $.entry_line)))),

    heading: ($) => choice(
      seq(field('date', $.date), repeat(choice($.kind, $._part)), optional($.comment), $._end),
      // a day without its year heads an entry where only the words of a heading follow; else its line is one like any other
      prec.dynamic(1, seq(field('date', alias($._day, $.date)), repeat(choice($.kind, $.time, $.value, $.number, $.mark)),
        optional(seq(alias($._by, $.word), repeat($._part))), optional($.comment), $._end)),
    ),

    _day: ($) => choice(seq(choice($.number, $._ordinal), $._month), seq($._month, choice($.number, $._ordinal)), $._short_day),

    kind: () => choice('check', 'log', 'visit'),

    _other_line: ($) => choice($._newline, seq($.comment, $._end), seq($.free_text, $._end)),

    free_text: ($) => seq(alias($._mark, '>'), repeat(choice($.link, alias($._free, $.text)))),

    _line: ($) => seq(
      choice($._said, seq(field('time', $.time), optional(choice($._said, seq(choice($.date, $.time), repeat($._part)))))),
      optional($.comment), $._end),

    _said: ($) => choice(
      seq(field('word', $.word), repeat($._part)),
      seq(field('word', alias($._own_words, $.word)), optional($._rest)),
      seq(field('word', alias('photo', $.word)), optional(seq(alias($._text, $.file), optional($._rest)))),
      seq(choice($.value, $.number, $.interval, $.tag, $.mark), repeat($._part)),
      seq(choice(field('word', alias($._month, $.word)), seq($.number, alias($._month, $.word)), alias(choice($._ordinal, $._short_day), $.value)), repeat($._behind_day)),
    ),

    _behind_day: ($) => choice($._part, alias(choice($.kind, $._by, $._month), $.word), alias($._ordinal, $.value)),

    _rest: ($) => repeat1(choice($.link, alias($._text, $.text))),

    // behind these the line is the writer's own words
    _own_words: () => choice('pet', 'breed', 'known', 'allergy', 'vet', 'clinic', 'owner', 'phone', 'chip', 'ask', 'surgery', 'done'),

    _part: ($) => choice($.date, $.time, $.value, $.number, $.interval, $.tag, $.word, $.mark),

    comment: () => token(prec(2, /#[^\r\n]*/)),
    _mark: () => token(prec(3, '>')),
    date: () => token(prec(1, choice(/\d{4}-\d{2}-\d{2}/, /\d{1,2}[.\/]\d{1,2}[.\/]\d{4}/, /\d{1,2}\.? [A-Z][a-z]{2,8} \d{4}/))),
    _month: () => choice(...months),
    _by: () => 'by',
    _ordinal: () => /\d{1,2}(st|nd|rd|th)/,
    _short_day: () => new RegExp(`\\d{1,2}\\.?(${months.join('|')})|\\d{1,2}\\.\\d{1,2}\\.`),
    time: () => /\d{1,2}:\d{2}/,
    number: () => /\d+/,
    interval: () => /\d+[hdwmy]/,
    value: () => /[<>≤≥~]+\d+|[<>≤≥~]*\d[\p{L}\d.%°\/×:+-]*(,\d[\p{L}\d.%°\/×:+-]*)*/,
    tag: () => /@[\p{L}\p{N}_-]+/,
    word: () => /[^\s\d#>@,;\ufeff][^\s,;]*/,
    mark: () => /[,;@<>≤≥~]/,
    link: () => token(prec(1, /https?:\/\/\S+/)),
    _text: () => /[^\s#]\S*/,
    _free: () => /\S+/,
    _newline: () => /\r\n|\n|\r/,
    _end: ($) => choice($._newline, $._eof),
    _eof: () => '\0',
  },
});
