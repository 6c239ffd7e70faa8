import { Problem } from '../../chat/problem.ts';

/** What to say when a port cannot be opened. */
export function portProblem(error: unknown, port: number): Problem {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
  const why = code === 'EADDRINUSE' ? 'something else is listening there' : `the system says ${code}`;
  return new Problem('bad_option', `PORT ${port} cannot be opened: ${why}.`, 'Set PORT to a free port.');
}
