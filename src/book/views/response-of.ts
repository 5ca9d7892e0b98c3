import { defaultResponse, type ResponseRow } from '../response.ts';
import { type Book, live, type RecordOf } from '../schema/index.ts';
import { type Given, given } from './given.ts';

/** The book's response table, in its order. */
export const responseOf = (book: Book): Given<readonly ResponseRow[]> =>
  given(
    live(book, 'responseRows')
      .sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1))
      .map(({ id, when, resource, agency, phone, radio, why }) => ({
        id,
        when: conditions(when),
        resource,
        agency,
        phone,
        radio,
        why,
      })),
    defaultResponse,
  );

const conditions = (when: RecordOf<'responseRows'>['when']): ResponseRow['when'] => ({
  ...(when.planAs && { planAs: when.planAs }),
  ...(when.ropeShort !== null && { ropeShort: when.ropeShort }),
  ...(when.peopleShort !== null && { peopleShort: when.peopleShort }),
  ...(when.water !== null && { water: when.water }),
  ...(when.laneClosed !== null && { laneClosed: when.laneClosed }),
  ...(when.hazards && { hazards: when.hazards }),
});
