import type { Answer } from '../../src/chat/answer.ts';
import type { Chat } from '../../src/chat/chat.ts';
import type { Request } from '../../src/chat/request.ts';
import type { Intent } from '../../src/chat/slots.ts';

/** A chat that knows four sentences, to show where a surface sends which kind of answer; it keeps what it was asked. */
export function smallChat(): Chat & { readonly asked: Request[] } {
  const asked: Request[] = [];
  const onlyWords = (): never => {
    throw new Error('this chat knows words only');
  };
  return {
    asked,
    act: onlyWords,
    home: onlyWords,
    forms: { open: onlyWords, submit: onlyWords },
    async ask(request) {
      asked.push(request);
      const said = SAID[request.text];
      if (request.text === 'break') throw new Error('a jar fell: WP-07 has a peanut allergy');
      if (!said) {
        const error = {
          code: 'not_understood',
          message: `I cannot read "${request.text}".`,
          hint: 'Type "help".',
        };
        return { request: request.text, intent: 'unknown', slots: {}, error };
      }
      return { request: request.text, intent: said[0], slots: {}, answer: answerOf(request.text, said[1]) };
    },
  };
}

const SAID: Readonly<Record<string, readonly [Intent, Answer['audience']]>> = {
  '40 oat bars': ['scale', 'channel'],
  'macros oat bars': ['macros', 'channel'],
  'can I eat the cherry bars': ['allergens', 'asker'],
  '<!channel> 40 oat bars': ['scale', 'channel'],
};

const answerOf = (title: string, audience: Answer['audience']): Answer => ({
  title,
  sections: [{ kind: 'list', items: ['rolled oats 400 g'] }],
  cautions: [],
  next: [{ label: 'Macros', says: 'macros oat bars' }],
  audience,
  data: {},
});
