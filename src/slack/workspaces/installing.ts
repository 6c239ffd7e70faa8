import { randomBytes } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { type InstallationStore, InstallProvider, type StateStore } from '@slack/oauth';
import { Problem } from '../../chat/problem.ts';
import type { Clock } from '../../kitchen/kitchen.ts';
import type { InstallsBegun } from '../../kitchen/workspaces/workspaces.ts';
import { clientOptions } from '../client.ts';
import { errorCode } from '../errors.ts';
import { boltLogger, type Log } from '../log.ts';
import { SCOPES } from '../scopes.ts';
import { sayPage } from './install-pages.ts';
import type { InstalledWorkspaces } from './installed.ts';

export const INSTALL_PATH = '/slack/install';
export const REDIRECT_PATH = '/slack/oauth_redirect';
/** As long as Slack's library keeps the browser's cookie. */
const STATE_MS = 10 * 60_000;

export interface InstallSettings {
  readonly clientId: string;
  readonly clientSecret: string;
  /** 32 bytes each; the first encrypts tokens, all decrypt them. */
  readonly tokenKeys: readonly Buffer[];
}

export interface InstallingParts {
  readonly settings: InstallSettings;
  readonly workspaces: InstalledWorkspaces;
  readonly begun: InstallsBegun;
  readonly clock: Clock;
  readonly log: Log;
  readonly apiUrl?: string;
  readonly onInstalled: (workspace: string) => void;
}

/** The two pages a browser visits to install the app. */
export interface Installing {
  /** False when the request is for neither. */
  serve(request: IncomingMessage, response: ServerResponse): boolean;
}

/** Slack's own install flow (OAuth v2), its state in the memory that all instances share, usable once. */
export function createInstalling(parts: InstallingParts): Installing {
  const { settings, workspaces, log, apiUrl, onInstalled } = parts;
  const scopes = Object.keys(SCOPES);
  const provider = new InstallProvider({
    clientId: settings.clientId,
    clientSecret: settings.clientSecret,
    stateStore: stateStore(parts),
    installationStore: installationStore(workspaces),
    installUrlOptions: { scopes },
    directInstall: true,
    clientOptions: clientOptions(apiUrl),
    logger: boltLogger(log),
    ...(apiUrl ? { authorizationUrl: authorizationUrl(apiUrl) } : {}),
  });

  async function begin(request: IncomingMessage, response: ServerResponse): Promise<void> {
    await provider.handleInstallPath(request, response);
  }

  async function finish(request: IncomingMessage, response: ServerResponse): Promise<void> {
    await provider.handleCallback(request, response, {
      success(installation, _options, _request, page) {
        log.info({ workspace: installation.team?.id }, 'installed');
        onInstalled(installation.team?.id ?? '');
        sayPage(page, 200, 'installed');
      },
      failure(error, _options, _request, page) {
        log.warn({ code: errorCode(error) }, 'an install was not finished');
        sayPage(page, 400, error instanceof Problem ? error : 'failed');
      },
    });
  }

  return {
    serve(request, response) {
      const path = request.url?.split('?', 1)[0];
      const step = path === INSTALL_PATH ? begin : path === REDIRECT_PATH ? finish : undefined;
      if (!step) return false;
      if (request.method !== 'GET') {
        response.writeHead(405, { allow: 'GET' }).end();
        return true;
      }
      step(request, response).catch((error) => {
        log.error({ code: errorCode(error) }, 'an install page failed');
        if (!response.headersSent) sayPage(response, 503, 'later');
      });
      return true;
    },
  };
}

/** Of a government workspace, or of a test at the wire, beside its API. */
const authorizationUrl = (apiUrl: string): string => new URL('/oauth/v2/authorize', apiUrl).href;

function stateStore({ begun, clock }: InstallingParts): StateStore {
  return {
    async generateStateParam(options) {
      const state = randomBytes(32).toString('base64url');
      await begun.put(state, JSON.stringify(options), clock.nowMs() + STATE_MS);
      return state;
    },
    async verifyStateParam(_now, state) {
      const options = await begun.take(state, clock.nowMs());
      if (options === undefined)
        throw new Problem(
          'bad_option',
          'This install was begun too long ago.',
          `Open ${INSTALL_PATH} again.`,
        );
      return JSON.parse(options);
    },
  };
}

function installationStore(workspaces: InstalledWorkspaces): InstallationStore {
  return {
    storeInstallation: (installation) => workspaces.join(installation),
    async fetchInstallation() {
      throw new Error('identities are read from the workspaces served');
    },
  };
}
