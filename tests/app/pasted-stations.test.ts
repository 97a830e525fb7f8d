import { expect, test } from 'vitest';
import { readPastedStations } from '@/app/models/[modelId]/body/_components/pasted-stations';

const two = {
  ok: true,
  stations: [
    { x: '0', height: '1/4', width: '5/32' },
    { x: '2 3/4', height: '1/8', width: '1/8' },
  ],
};

test.each([
  ['tabs', '0\t1/4\t5/32\n2 3/4\t1/8\t1/8\n'],
  ['semicolons and a heading', 'x; height; width\r\n0; 1/4; 5/32\r\n\r\n2 3/4; 1/8; 1/8'],
  ['commas and empty cells behind', '0,1/4,5/32,\n2 3/4,1/8,1/8,'],
])('points with %s', (_, text) => {
  expect(readPastedStations(text)).toEqual(two);
});

test('decimal commas stay in the values where semicolons part them', () => {
  const stations = [{ x: '0', height: '6,5', width: '4' }];
  expect(readPastedStations('0;6,5;4')).toEqual({ ok: true, stations });
});

test('a line that does not hold three values is named', () => {
  expect(readPastedStations('0;5;4\n10;5')).toEqual({ ok: false, line: 2, text: '10;5' });
  expect(readPastedStations('0;5;4;3')).toMatchObject({ ok: false, line: 1 });
});
