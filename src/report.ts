import type { ReportUnexpected } from './chat/chat.ts';
import type { Config } from './config.ts';

/**
 * Records unexpected failures on stderr with an id a person can quote. Logger and cryptography are loaded at the first failure:
 * a terminal that works never needs it.
 */
export function createReporter(level: Config['logLevel']): ReportUnexpected {
  return (error) => {
    const id = crypto.randomUUID().slice(0, 8);
    void import('pino').then(({ pino }) => {
      pino({ level }, pino.destination({ dest: 2, sync: true })).error(
        { id, err: error },
        'unexpected failure',
      );
    });
    return id;
  };
}
