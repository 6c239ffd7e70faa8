import type { ServerResponse } from 'node:http';
import type { Problem } from '../../chat/problem.ts';

const PAGES = {
  installed: [
    'Batchbell is installed.',
    'Go back to Slack and type /kitchen help. You are the first of its kitchen staff.',
  ],
  failed: [
    'Batchbell was not installed.',
    'Slack or this server refused the last step. Open /slack/install and begin again.',
  ],
  later: ['The kitchen cannot be reached just now.', 'Nothing was installed. Try again in a minute.'],
} as const;

/** A plain page that loads nothing and says what to do next. */
export function sayPage(response: ServerResponse, status: number, page: keyof typeof PAGES | Problem): void {
  const [title, what] = typeof page === 'string' ? PAGES[page] : [page.message, page.hint];
  response.writeHead(status, {
    'content-type': 'text/html; charset=utf-8',
    'content-security-policy': "default-src 'none'",
    'cache-control': 'no-store',
    'referrer-policy': 'no-referrer',
  });
  response.end(
    `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${title}</title><h1>${title}</h1><p>${what}</p></html>\n`,
  );
}
