/**
 * Counts what a run of .ci/run found. Arguments: the names of the steps that failed. Tests are counted from the report
 * of the test run; a step other than the tests that failed, a test file that could not be read, a test that did not run
 * and a run that died count as one failure each. Exits 1 when anything failed.
 */
import { existsSync, readFileSync } from 'node:fs';

const REPORT = '.test-output/report.json';
const steps = process.argv.slice(2);
const report = existsSync(REPORT) ? JSON.parse(readFileSync(REPORT, 'utf8')) : null;

const broken = steps.filter((step) => step !== 'test').map((step) => `step ${step}`);
for (const { name, status, message, assertionResults } of report?.testResults ?? []) {
  const file = name.replace(`${process.cwd()}/`, '');
  const bad = assertionResults.filter((test) => test.status !== 'passed');
  for (const test of bad) broken.push(`${test.status} ${file} > ${test.fullName}`);
  if (status === 'failed' && bad.length === 0) broken.push(`failed ${file}: ${message.split('\n')[0]}`);
}
const anyTestBroken = broken.length > steps.filter((step) => step !== 'test').length;
const ranBadly = report === null ? steps[0] !== 'install' : !report.success || report.numTotalTests === 0;
if ((ranBadly || steps.includes('test')) && !anyTestBroken) {
  broken.push('the test run: it ended without a good report; see its output above');
}

if (broken.length > 0) console.log(`\nWhat failed:\n${broken.map((line) => `  ${line}`).join('\n')}`);
console.log(`\n${report?.numPassedTests ?? 0} passed, ${broken.length} failed`);
process.exit(broken.length > 0 ? 1 : 0);
