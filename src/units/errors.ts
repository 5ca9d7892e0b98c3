/**
 * An error that a person can cause and mend. The message is one sentence: what came, what was expected, what to do next.
 * `code` is a short stable word for tests and screens, never shown alone.
 */
export class UserError extends Error {
  override readonly name = 'UserError';
  readonly code: string;
  constructor(code: string, sentence: string, options?: ErrorOptions) {
    super(sentence, options);
    this.code = code;
  }
}
