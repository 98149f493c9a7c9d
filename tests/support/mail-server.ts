/** A mail server that takes whatever comes, and reads it back with a reader that shares no code with the writer. */
import type { AddressInfo } from 'node:net';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';

export interface MailArrived {
  mail: ParsedMail;
  /** As the envelope says. */
  from: string;
  to: string[];
  /** False when it was told that its mail was not taken. */
  accepted: boolean;
}

export interface MailServer {
  url: string;
  /** In the order they came, refused ones too. */
  arrived: MailArrived[];
  /** How the next mails are answered, one after the other; then they are taken. */
  answers: number[];
  /** Mailboxes that are not there. */
  refuses: Set<string>;
  stop(): Promise<void>;
}

/** Each mail takes it so long. A free port, unless one is named. */
export async function mailServer({ port = 0, delayMs = 0 } = {}): Promise<MailServer> {
  const arrived: MailArrived[] = [];
  const answers: number[] = [];
  const refuses = new Set<string>();
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    logger: false,
    onRcptTo({ address }, _session, done) {
      done(refuses.has(address) ? refusal(550) : null);
    },
    onData(stream, session, done) {
      const { mailFrom, rcptTo } = session.envelope;
      void simpleParser(stream).then(
        (mail) => {
          const answer = answers.shift();
          const from = mailFrom === false ? '' : mailFrom.address;
          arrived.push({ mail, from, to: rcptTo.map(({ address }) => address), accepted: answer === undefined });
          setTimeout(() => done(answer === undefined ? null : refusal(answer)), delayMs);
        },
        // A sender that was killed in the middle of a mail has sent none.
        (cut: Error) => done(cut),
      );
    },
  });
  server.on('error', () => undefined);
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  const { port: taken } = server.server.address() as AddressInfo;
  return {
    url: `smtp://127.0.0.1:${taken}`,
    arrived,
    answers,
    refuses,
    stop: () => new Promise((resolve) => server.close(() => resolve())),
  };
}

function refusal(responseCode: number): Error {
  return Object.assign(new Error('not now'), { responseCode });
}
