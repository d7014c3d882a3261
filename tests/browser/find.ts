/**
 * Which Chromium, Chrome or Edge of this machine drives the journeys? `BROWSER_PATH` wins, then
 * the names on the search path, then the usual homes on each platform. Nothing is downloaded here;
 * see `obtain.ts`.
 */
import { existsSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';

const commands = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
];

const macHomes = ['Chromium', 'Google Chrome', 'Microsoft Edge'].flatMap((name) =>
  ['/Applications', join(homedir(), 'Applications')].map((folder) =>
    join(folder, `${name}.app`, 'Contents', 'MacOS', name),
  ),
);

const windowsHomes = (env: NodeJS.ProcessEnv): string[] =>
  [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA]
    .filter((folder) => folder !== undefined)
    .flatMap((folder) => [
      join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
      join(folder, 'Chromium', 'Application', 'chrome.exe'),
      join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
    ]);

/** Path of a browser that can run the journeys, or undefined where this machine has none. */
export function findBrowser(
  env: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
): string | undefined {
  const named = env.BROWSER_PATH;
  if (named !== undefined && named !== '') return isFile(named) ? named : undefined;
  const folders = (env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const homes =
    platform === 'win32'
      ? windowsHomes(env)
      : platform === 'darwin'
        ? macHomes
        : commands.map((command) => join('/snap/bin', command));
  const onPath = commands.flatMap((command) => folders.map((folder) => join(folder, command)));
  return [...onPath, ...homes].find(isFile);
}

const isFile = (path: string): boolean => existsSync(path) && statSync(path).isFile();
