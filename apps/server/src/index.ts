/** The HTTP server, and what the demo loader needs of it. */
export { describeInterface, startServer, type RunningServer, type ServerOptions } from './server.js';
export { hashSecret } from './people/secrets.js';
export { signatureOf, actorOf } from './people/signer.js';
export type { FileTaken, MovementFile } from './movements/files/file-intake.service.js';
export { NoticingService } from './watch/reminders/noticing.service.js';
export type { WatchOptions } from './watch/reminders/watch-options.js';
export { settingsOf } from './people/operator-settings.js';
export { livesOf, writeActs } from './defects/defect-book.js';
export { registerView } from './register/register-views.service.js';
export { compareRecord } from './record/compare/compare-record.js';
export type { Compared } from './record/compare/compared.js';
export { LEFT_OUT, REBUILT } from './record/compare/left-out.js';
export type { Difference } from './record/compare/difference.js';
export { letAdministratorIn } from './opening/first-administrator.js';
export { openOperator, OpeningRefused, type Opening } from './opening/open-operator.js';
export { operatorsThere, type OperatorThere } from './opening/operators-there.js';
export { resealAll, type Resealed } from './watch/reminders/reseal.js';
