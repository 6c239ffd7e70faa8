import type { AllMiddlewareArgs, AnyMiddlewareArgs } from '@slack/bolt';

/**
 * Acknowledges before any work, so that no answer, however slow, makes Slack show a time-out. Modal submissions and option
 * lists answer in their acknowledgement and give it themselves; Bolt acknowledges events.
 */
export async function ackAtOnce(args: AnyMiddlewareArgs & AllMiddlewareArgs): Promise<void> {
  if ('ack' in args && typeof args.ack === 'function' && !answersInAck(args.body)) await args.ack();
  await args.next();
}

const answersInAck = (body: AnyMiddlewareArgs['body']): boolean =>
  'type' in body && (body.type === 'view_submission' || body.type === 'block_suggestion');
