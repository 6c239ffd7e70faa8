import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A real file system of a few hundred kilobytes that can be filled and given room again. */
export interface SmallDisk {
  readonly folder: string;
  /** Takes all the room that is left. */
  fill(): void;
  /** Gives back what `fill` took. */
  makeRoom(): void;
  /** From now on nobody may write to it, not even root; or everybody may again. */
  writable(is: boolean): void;
  remove(): void;
}

/** Mounts one in memory; where this user may not mount, the reason why not. */
export function smallDisk(kilobytes: number): SmallDisk | string {
  const folder = mkdtempSync(join(tmpdir(), 'batchbell-disk-'));
  const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder], {
    encoding: 'utf8',
  });
  if (mounted.status !== 0) {
    rmSync(folder, { recursive: true });
    const reason = mounted.error?.message ?? mounted.stderr.trim();
    return `no small disk can be mounted here: ${reason}`;
  }
  const ballast = join(folder, 'ballast');
  return {
    folder,
    fill() {
      const { bavail, bsize } = statfsSync(folder);
      writeFileSync(ballast, Buffer.alloc(bavail * bsize));
    },
    makeRoom: () => rmSync(ballast, { force: true }),
    writable(is) {
      const { status, stderr } = spawnSync('mount', ['-o', `remount,${is ? 'rw' : 'ro'}`, folder], {
        encoding: 'utf8',
      });
      if (status !== 0) throw new Error(stderr);
    },
    remove() {
      spawnSync('umount', [folder]);
      rmSync(folder, { recursive: true });
    },
  };
}
