import { UserError } from '../../units/index.ts';

/** Throws `UserError` with the HTTP status in its sentence unless the answer is a success. [source: rfc9110] */
export async function checkAnswer(answer: Response, url: string): Promise<void> {
  if (answer.ok) return;
  await answer.body?.cancel();
  const status = answer.statusText ? `${answer.status} ${answer.statusText}` : `${answer.status}`;
  throw new UserError('http', `${url} answered ${status}; ${advice(answer.status)}.`);
}

function advice(status: number): string {
  if (status === 404 || status === 410) return 'check the address';
  if (status === 401 || status === 403)
    return 'it needs a permission that is not there: download the file and open it from disk';
  if (status === 429 || status >= 500) return 'the server is busy or broken: try again later';
  return 'check the address, or download the file and open it from disk';
}
