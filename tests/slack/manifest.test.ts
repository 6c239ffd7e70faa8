import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isScalar, isSeq, parse, parseDocument } from 'yaml';
import { LISTENERS } from '../../src/slack/listeners/index.ts';
import { SCOPES } from '../../src/slack/scopes.ts';

const root = new URL('../../', import.meta.url).pathname;
const manifestText = (name: string) => readFileSync(`${root}manifest/${name}`, 'utf8');
const NAMES = ['socket-mode.yaml', 'http.yaml'];

/** The parts of a manifest that these tests look at. */
interface Written {
  display_information: { name: string; description: string; long_description: string };
  features: {
    app_home: object;
    bot_user: { display_name: string };
    shortcuts: { name: string; type: string; callback_id: string; description: string }[];
    slash_commands: {
      command: string;
      description: string;
      usage_hint: string;
      should_escape: boolean;
      url?: string;
    }[];
  };
  oauth_config: { scopes: { bot: string[]; user?: string[] } };
  settings: {
    event_subscriptions: { bot_events: string[]; request_url?: string };
    interactivity: { is_enabled: boolean; request_url?: string };
    socket_mode_enabled: boolean;
  };
}
const manifest = (name: string) => parse(manifestText(name)) as Written;

/** Scopes by what needs them, from Slack's reference of each method, event and feature. */
const SCOPE_OF: Readonly<Record<string, string>> = {
  'auth.test': '',
  'users.info': 'users:read',
  'usergroups.users.list': 'usergroups:read',
  app_uninstalled: '',
  tokens_revoked: '',
  'chat.postMessage': 'chat:write',
  'chat.postEphemeral': 'chat:write',
  app_mention: 'app_mentions:read',
  'message.im': 'im:history',
  'chat.update': 'chat:write',
  'files.info': 'files:read',
  'files.getUploadURLExternal': 'files:write',
  'files.completeUploadExternal': 'files:write',
  app_home_opened: '',
  'views.open': '',
  'views.update': '',
  'views.publish': '',
  'conversations.open': 'im:write',
  'conversations.history': 'channels:history groups:history',
  '/kitchen': 'commands',
};

/** Web API methods the code calls, read from the code. */
function calledMethods(): string[] {
  const files = readdirSync(`${root}src/slack`, { recursive: true, encoding: 'utf8' }).filter((f) =>
    f.endsWith('.ts'),
  );
  const calls = files.flatMap((file) => {
    const text = readFileSync(`${root}src/slack/${file}`, 'utf8');
    return [...text.matchAll(/client\s*\.([a-z]+(?:\s*\.[a-z]+)?)\s*\.([a-zA-Z]+)\(/g)].map(
      (match) => `${match[1]?.replace(/\s/g, '')}.${match[2]}`,
    );
  });
  return [...new Set(calls)].sort();
}

describe.each(NAMES)('%s', (name) => {
  test('is made from the one source', async () => {
    const made = (await import(`${root}manifest/variants.mjs`)) as { variants(): Record<string, string> };
    expect(manifestText(name)).toBe(made.variants()[name]);
  });

  test('has the commands, events and buttons of the code, and nothing else', () => {
    const { features, settings } = manifest(name);
    expect(features.slash_commands.map(({ command }) => command)).toEqual(LISTENERS.commands);
    expect(settings.event_subscriptions.bot_events).toEqual(LISTENERS.events);
    expect(settings.interactivity.is_enabled).toBe(LISTENERS.actions.length > 0);
    expect(features.shortcuts.map(({ callback_id: id }) => id).sort()).toEqual(
      [...LISTENERS.shortcuts].sort(),
    );
    for (const { name, type, description } of features.shortcuts) {
      expect(type).toBe('global');
      expect(name.length).toBeLessThanOrEqual(24);
      expect(description.length).toBeLessThanOrEqual(150);
    }
    expect(Object.keys(features).sort()).toEqual(['app_home', 'bot_user', 'shortcuts', 'slash_commands']);
  });

  test('asks for the scopes the code needs, and for nothing else', () => {
    const users = [...calledMethods(), ...LISTENERS.events, ...LISTENERS.commands];
    const unknown = users.filter((user) => SCOPE_OF[user] === undefined);
    expect(unknown).toEqual([]);
    const needed = new Set(
      users.flatMap((user) => (SCOPE_OF[user] ?? '').split(' ')).filter((scope) => scope !== ''),
    );
    const { scopes } = manifest(name).oauth_config;
    expect([...scopes.bot].sort()).toEqual([...needed].sort());
    expect(scopes.user).toBeUndefined();
  });

  test('says the reason of every scope, the same as the code', () => {
    const list = parseDocument(manifestText(name)).getIn(['oauth_config', 'scopes', 'bot']);
    const reasons = isSeq(list)
      ? list.items.map((item) => (isScalar(item) ? [item.value, item.comment?.trim()] : []))
      : [];
    expect(Object.fromEntries(reasons)).toEqual(SCOPES);
  });

  test('keeps to the lengths Slack accepts', () => {
    const { display_information: shown, features } = manifest(name);
    expect(shown.name.length).toBeLessThanOrEqual(35);
    expect(shown.description.length).toBeLessThanOrEqual(140);
    expect(shown.long_description.length).toBeGreaterThanOrEqual(175);
    expect(shown.long_description.length).toBeLessThanOrEqual(4000);
    expect(features.bot_user.display_name.length).toBeLessThanOrEqual(80);
    for (const {
      command,
      description,
      usage_hint: hint,
      should_escape: isEscaped,
    } of features.slash_commands) {
      expect(command).toMatch(/^\/[a-z-]{1,31}$/);
      expect(description.length).toBeLessThanOrEqual(2000);
      expect(hint.length).toBeLessThanOrEqual(1000);
      expect(isEscaped).toBe(true);
    }
  });

  test('people can write to the bot', () => {
    expect(manifest(name).features.app_home).toEqual({
      home_tab_enabled: true,
      messages_tab_enabled: true,
      messages_tab_read_only_enabled: false,
    });
  });

  test('names addresses only where it is served over HTTP', () => {
    const { features, settings } = manifest(name);
    const urls = [
      features.slash_commands[0]?.url,
      settings.event_subscriptions.request_url,
      settings.interactivity.request_url,
    ];
    const isHttp = !settings.socket_mode_enabled;
    expect(isHttp).toBe(name === 'http.yaml');
    expect(urls.every((url) => (isHttp ? url?.endsWith('/slack/events') : url === undefined))).toBe(true);
  });
});

describe('the manifests', () => {
  test('fit the types that @slack/web-api gives a manifest', () => {
    const literals = NAMES.map(
      (name, at) => `export const m${at}: Manifest = ${JSON.stringify(manifest(name))};`,
    );
    const faulty = `export const wrong: Manifest = ${JSON.stringify({ display_information: { name: 1 } })};`;
    const source = [
      "import type { AppsManifestCreateArguments } from '@slack/web-api';",
      "type Manifest = AppsManifestCreateArguments['manifest'];",
      ...literals,
      faulty,
    ].join('\n');
    const faults = typeFaults(source);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toContain("'number' is not assignable to type 'string'");
  });
});

/** What the compiler says about a file that sees our packages; run as its command, the same in every version. */
function typeFaults(source: string): string[] {
  const folder = mkdtempSync(join(tmpdir(), 'manifest-'));
  try {
    symlinkSync(`${root}node_modules`, join(folder, 'node_modules'));
    writeFileSync(join(folder, 'manifest.ts'), source);
    const compilerOptions = {
      strict: true,
      noEmit: true,
      skipLibCheck: true,
      module: 'nodenext',
      types: ['node'],
    };
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify({ compilerOptions, files: ['manifest.ts'] }));
    const tsc = join(folder, 'node_modules/typescript/bin/tsc');
    const { stdout } = spawnSync(process.execPath, [tsc, '-p', folder, '--pretty', 'false'], {
      encoding: 'utf8',
    });
    return stdout.split('\n').filter((line) => /error TS\d+/.test(line));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
