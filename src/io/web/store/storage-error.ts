import { UserError } from '../../../units/index.ts';

/** The sentence for a transaction that the browser refused. Nothing of it was kept. */
export function storageError(cause: unknown): UserError {
  if (cause instanceof UserError) return cause;
  const name = cause instanceof DOMException ? cause.name : '';
  if (name === 'QuotaExceededError') {
    return new UserError(
      'disk-full',
      'There is no room left on this device: this change is not saved. Make room (photos, other files), then save it again; the book as it was is whole.',
      { cause },
    );
  }
  if (name === 'InvalidStateError') {
    return new UserError(
      'book-closed',
      'The book was closed under this page: this change is not saved. Load the page again.',
      { cause },
    );
  }
  return new UserError(
    'not-saved',
    'This change is not saved: the device refused it. Try again; the book as it was is whole.',
    { cause },
  );
}
