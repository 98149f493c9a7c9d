import type { Command } from './command.js';
import { backup } from './commands/backup.js';
import { deadline } from './commands/deadline.js';
import { eraseAgainCommand } from './commands/erase-again.js';
import { judge } from './commands/judge.js';
import { melAgainst } from './commands/mel-against.js';
import { melCheck } from './commands/mel-check.js';
import { melCompare } from './commands/mel-compare.js';
import { left } from './commands/left.js';
import { migrate } from './commands/migrate.js';
import { movementsRead } from './commands/movements-read.js';
import { operatorAdd } from './commands/operator-add.js';
import { operatorAdministrator } from './commands/operator-administrator.js';
import { operatorList } from './commands/operator-list.js';
import { recordCheck } from './commands/record-check.js';
import { recordCompare } from './commands/record-compare.js';
import { recordProve } from './commands/record-prove.js';
import { recordVerify } from './commands/record-verify.js';
import { restore } from './commands/restore.js';
import { secretsRenew } from './commands/secrets-renew.js';
import { seed } from './commands/seed.js';
import { start } from './commands/start.js';

/** Every command, in the order of `proviso help`. A new one is a file in commands/ and a line here. */
export const COMMANDS: readonly Command[] = [
  judge,
  deadline,
  melCheck,
  melCompare,
  melAgainst,
  movementsRead,
  recordVerify,
  recordCompare,
  recordProve,
  recordCheck,
  backup,
  restore,
  eraseAgainCommand,
  left,
  operatorAdd,
  operatorAdministrator,
  operatorList,
  secretsRenew,
  migrate,
  seed,
  start,
];
