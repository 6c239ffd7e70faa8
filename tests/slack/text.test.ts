import { describe, expect, test } from 'vitest';
import { incomingText } from '../../src/slack/incoming-text.ts';
import { cut, escaped, shown } from '../../src/slack/text.ts';

describe('text that comes from Slack', () => {
  test.each([
    ['<@U0BOT> 40 oat bars', '40 oat bars'],
    ['40 <@U0BOT|batchbell> oat bars', '40   oat bars'],
    ['salt &amp; pepper &lt;3', 'salt & pepper <3'],
    ['&amp;lt;', '&lt;'],
    ['what\u2019s in the \u201coat bar\u201d', 'what\'s in the "oat bar"'],
    ['40\u00a0bars', '40 bars'],
    ['<https://herons.test/feed.ics|feed>', 'feed'],
    ['<https://herons.test/feed.ics>', 'https://herons.test/feed.ics'],
    ['<#C1|kitchen> <#C2>', '#kitchen #C2'],
    ['<!here> <!subteam^S1|@interns>', '@here @interns'],
    ['<@U0OTHER|a name> made 40', '@U0OTHER made 40'],
  ])('%s is read as %s', (given, expected) => {
    expect(incomingText(given, 'U0BOT')).toBe(expected);
  });
});

describe('text that goes to Slack', () => {
  test('is escaped in its three characters and nothing else', () => {
    expect(escaped('<!channel> & "co" *b*', 100)).toBe('&lt;!channel&gt; &amp; "co" *b*');
  });

  test('is never cut inside an escape', () => {
    for (let most = 1; most < 20; most += 1) {
      expect(escaped('a<b&c>d', most)).toMatch(/^(a|b|c|d|&lt;|&gt;|&amp;)*…?$/);
      expect(escaped('a<b&c>d', most).length).toBeLessThanOrEqual(most);
    }
  });

  test('is never cut inside a character', () => {
    expect(cut('ab🥣🥣', 5)).toBe('ab🥣…');
    expect(cut('ab🥣🥣', 4)).toBe('ab…');
  });

  test('holds no control sequence even where Slack reads none', () => {
    expect(shown('<!channel> <@U1> <#C1> a<b')).toBe('‹!channel> ‹@U1> ‹#C1> a<b');
  });
});
