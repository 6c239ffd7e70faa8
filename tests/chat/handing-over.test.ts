import { describe, expect, test } from 'vitest';
import type { Answer } from '../../src/chat/answer.ts';
import { COMMANDS } from '../../src/chat/commands/index.ts';
import { plainText } from '../../src/chat/plain-text.ts';
import type { PersonRole } from '../../src/chat/request.ts';
import type { Intent, Slots } from '../../src/chat/slots.ts';
import { EMERGENCY_TOPICS, emergencyTopic, MEDICAL_TOPICS, medicalTopic } from '../../src/chat/topics.ts';
import { openKitchen } from '../../src/open-kitchen.ts';

const kitchen = await openKitchen({ nowMs: () => Date.parse('2026-10-30T19:00:00Z') });

const commandFor = (intent: Intent) => {
  const command = COMMANDS.find((known) => known.intent === intent);
  if (!command) throw new Error(`no command for ${intent}`);
  return command;
};

const answerTo = async (
  intent: Intent,
  slots: Slots,
  text = '',
  role: PersonRole = 'athlete',
): Promise<Answer> => {
  const asker = { role, who: 'WP-07', workspace: 'local' };
  const request = { text, asker, conversation: 'c', isPrivate: true, nowMs: kitchen.clock.nowMs() };
  return (await commandFor(intent).answers({ slots, request, kitchen, conversation: {} })).answer;
};

describe('an emergency', () => {
  test.each([...EMERGENCY_TOPICS, undefined])(
    '%s: the local number and nothing else first',
    async (topic) => {
      const answer = await answerTo('emergency', topic ? { topic } : {});
      expect(answer.title).toMatch(/^Call 911 now/);
      expect(answer.next).toEqual([]);
      expect(plainText(answer)).toContain(kitchen.book.settings.contacts.athleticTrainer);
    },
  );

  test.each([...EMERGENCY_TOPICS, undefined])('%s: no talk of recipes', async (topic) => {
    const text = plainText(await answerTo('emergency', topic ? { topic } : {}));
    expect(text).not.toMatch(/recipe|bars?\b|snack|swap|menu|ingredient|help\b/i);
  });

  test('a reaction names the auto-injector and the action plan in the first line', async () => {
    const { title } = await answerTo('emergency', { topic: 'allergic_reaction' });
    expect(title).toMatch(/epinephrine auto-injector.*emergency action plan/);
  });

  test('self-harm names 988 in the US and does not leave the person alone', async () => {
    const text = plainText(await answerTo('emergency', { topic: 'self_harm' }));
    expect(text).toContain('988');
    expect(text).toContain('Stay with the person');
  });

  test('988 is not named where another number is the local one', async () => {
    const { settings } = kitchen.book;
    const abroad = {
      ...kitchen,
      book: { ...kitchen.book, settings: { ...settings, emergencyNumber: '112' } },
    };
    const asker = { role: 'athlete', who: 'WP-07', workspace: 'local' } as const;
    const request = { text: '', asker, conversation: 'c', isPrivate: true, nowMs: 0 };
    const { answer } = await commandFor('emergency').answers({
      slots: { topic: 'self_harm' },
      request,
      kitchen: abroad,
      conversation: {},
    });
    expect(answer.title).toMatch(/^Call 112 now/);
    expect(plainText(answer)).not.toContain('988');
  });
});

describe('a medical question', () => {
  test.each([...MEDICAL_TOPICS, undefined])(
    '%s: names the three people and gives no figure',
    async (topic) => {
      const answer = await answerTo('medical', topic ? { topic } : {});
      const { dietitian, physician, athleticTrainer } = kitchen.book.settings.contacts;
      const text = plainText(answer);
      for (const contact of [dietitian, physician, athleticTrainer]) expect(answer.title).toContain(contact);
      expect(text.replaceAll('call 911', '')).not.toMatch(/\d/);
      expect(text).not.toMatch(/calorie|kcal|\bgood food|bad food|burn|earn/i);
      // Of food that may have made somebody ill, what becomes of the batch is said too.
      const most = topic === 'food_illness' ? 14 : 8;
      expect(text.split('\n').filter((line) => line !== '').length).toBeLessThanOrEqual(most);
      if (topic === 'food_illness')
        expect(text).toMatch(/allergen[\s\S]*foodborne[\s\S]*set the whole batch aside/);
    },
  );

  test('is for the asker only', async () => {
    expect((await answerTo('medical', { topic: 'weight_loss' })).audience).toBe('asker');
  });
});

describe('a supplement', () => {
  test('gets no verdict and the strict-liability caution', async () => {
    const answer = await answerTo('supplement', { supplement: 'creatine', ask: 'permitted' });
    expect(answer.title).toBe('Ask your sports dietitian or athletic trainer before any supplement.');
    expect(plainText(answer)).not.toMatch(/\b(legal|permitted|allowed|banned|safe|clean)\b/i);
    expect(answer.cautions.join()).toMatch(/You answer for whatever is in your body/);
  });
});

describe('a temperature', () => {
  // FDA Food Code model 3-501.16: cold holding at 41 °F or below, hot holding at 135 °F or above.
  test('is met with the limits, what to do now, and no promise', async () => {
    const text = plainText(await answerTo('temperature', { ask: 'limit' }, 'how cold', 'intern'));
    expect(text).toMatch(/41 °F \(5 °C\)[\s\S]*135 °F \(57 °C\)/);
    expect(text).not.toMatch(/\bsafe\b/i);
    expect(text).toContain('local health code');
  });
});

describe('the topic of a reading', () => {
  test.each([
    ['allergic reaction', 'allergic_reaction'],
    ['self-harm', 'self_harm'],
    ['not breathing', 'collapse'],
    ['heat illness', 'heat_illness'],
    ['choking', 'choking'],
    ['bleeding', undefined],
    [undefined, undefined],
  ])('emergency "%s" is answered as %s', (said, topic) => {
    expect(emergencyTopic(said)).toBe(topic);
  });

  test.each([...MEDICAL_TOPICS])('medical "%s" is itself', (topic) => {
    expect(medicalTopic(topic)).toBe(topic);
    expect(medicalTopic(topic.replace('_', ' '))).toBe(topic);
  });

  test.each([...EMERGENCY_TOPICS])('emergency "%s" is itself', (topic) => {
    expect(emergencyTopic(topic)).toBe(topic);
  });
});
