import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Cells, fieldsOf, quotedFields, type Separator } from '@/lib/exchange/cells';

const field = fc.stringMatching(/^[ -~°]{0,8}$/);
const fields = fc.array(field, { minLength: 2, maxLength: 6 });
const separator = fc.constantFrom<Separator>(',', ';', '\t', '|');

function texts(cells: Cells): string[] {
  return Array.from({ length: cells.count }, (_, index) => cells.text.slice(cells.start(index), cells.end(index)));
}

it('takes a line without quotes apart as csv-parse does', () => {
  fc.assert(
    fc.property(fields, separator, (row, mark) => {
      const line = row.map((text) => text.replace(/["]/g, '')).join(mark);
      fc.pre(line !== '');
      const cells = new Cells();
      cells.setLine(line, mark);
      expect(texts(cells)).toEqual(parse(line, { delimiter: mark, record_delimiter: '\n' })[0]);
    }),
  );
});

it('gives back quoted fields (RFC 4180), however many lines come at once', () => {
  fc.assert(
    fc.property(fc.array(fields, { minLength: 1, maxLength: 5 }), separator, (rows, mark) => {
      const trimmed = rows.map((row) => row.map((text) => text.trim()));
      const lines = trimmed.map((row) => row.map((text) => `"${text.replaceAll('"', '""')}"`).join(mark));
      expect(quotedFields(lines, mark)).toEqual(trimmed);
      expect(lines.map((line) => fieldsOf(line, mark))).toEqual(trimmed);
    }),
  );
});
