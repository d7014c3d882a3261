/**
 * Makes sure a browser is there before the suites run: an installed one is used; on Debian and its
 * kin, as root, the distribution's own package is installed; anywhere else the test run stops here
 * and says exactly what to do. A missing browser is a failure, never a skipped suite.
 */
import { spawnSync } from 'node:child_process';
import { findBrowser } from './find.ts';

const advice: Partial<Record<NodeJS.Platform, string>> = {
  linux:
    'Install Chromium with the package manager of your distribution, for example ' +
    '"sudo apt-get install chromium" or "sudo dnf install chromium".',
  darwin: 'Install Chromium, Chrome or Edge into the Applications folder.',
  win32: 'Install Chrome or Edge; Edge is part of most Windows installations.',
};

const isDebianRoot = (): boolean =>
  process.platform === 'linux' &&
  process.getuid?.() === 0 &&
  spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0;

/** Installs the distribution's Chromium; the exit status of the last step, 0 where it worked. */
function installChromium(): number {
  const steps = [['update'], ['install', '--yes', '--no-install-recommends', 'chromium']] as const;
  for (const step of steps) {
    console.log(`No browser found: apt-get ${step.join(' ')}`);
    const { status } = spawnSync('apt-get', step, {
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    if (status !== 0) return status ?? 1;
  }
  return 0;
}

const named = process.env.BROWSER_PATH;
if (findBrowser() === undefined && !named && isDebianRoot()) installChromium();

const browser = findBrowser();
if (browser === undefined) {
  console.error(
    [
      named
        ? `BROWSER_PATH says ${named}, but no such file exists.`
        : 'The browser journeys need Chromium, Chrome or Edge, and this machine has none.',
      named ? 'Correct it, or unset it.' : (advice[process.platform] ?? 'Install Chromium.'),
      'If it is installed somewhere unusual: BROWSER_PATH=/path/to/browser npm test',
    ].join('\n'),
  );
  process.exitCode = 1;
} else {
  console.log(`Browser for the journeys: ${browser}`);
}
