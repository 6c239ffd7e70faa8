import { benchSlackAcks } from './slack-acks.ts';
console.log(JSON.stringify(await benchSlackAcks({ seconds: Number(process.argv[2] ?? 10) })));
