import { Problem } from '../../../nutrition/problem.ts';
import type { Answer } from '../../answer.ts';

const ABSOLUTE_ZERO = { c: -273.15, f: -459.67 } as const;

/** Both scales of one temperature: C = (F - 32) x 5/9, exact (NIST SP 811). */
export function temperatureAnswer(degrees: number, scale: 'f' | 'c'): Answer {
  if (!(degrees >= ABSOLUTE_ZERO[scale] && degrees <= 5000)) {
    throw new Problem(
      'bad_quantity',
      `${degrees} is no temperature in a kitchen.`,
      'Write it like "350 F in C".',
    );
  }
  const celsius = scale === 'c' ? degrees : ((degrees - 32) * 5) / 9;
  const fahrenheit = scale === 'f' ? degrees : (degrees * 9) / 5 + 32;
  const text = (value: number) => String(Math.round(value * 10) / 10);
  return {
    title:
      scale === 'f'
        ? `${text(degrees)} F = ${text(celsius)} C`
        : `${text(degrees)} C = ${text(fahrenheit)} F`,
    sections: [],
    cautions: [],
    next: [],
    audience: 'channel',
    data: { temperatureF: Math.round(fahrenheit * 100) / 100, temperatureC: Math.round(celsius * 100) / 100 },
  };
}
