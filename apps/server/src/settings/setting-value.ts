/** Whether a value fits a setting, and how it reads. */
import { baseZone, IntervalInputError } from '#intervals';
import type { Setting, SettingKind, SettingValue } from './setting.js';

/** What is wrong with a value, in words; null when it fits. */
export function misfitOfSetting({ takes }: Setting, value: unknown): string | null {
  switch (takes.kind) {
    case 'choice':
      return takes.choices.some((choice) => choice.value === value) ? null : `must be one of ${named(takes)}`;
    case 'some-of':
      return isSomeOf(takes, value) ? null : `must be a list of ${named(takes)}, each at most once`;
    case 'yes-no':
      return typeof value === 'boolean' ? null : 'must be true or false';
    case 'whole':
      return Number.isInteger(value) && (value as number) >= takes.least && (value as number) <= takes.most
        ? null
        : `must be a whole number of ${takes.unit} from ${takes.least} to ${takes.most}`;
    case 'text':
      return isText(takes, value) ? null : `must be a text of at most ${takes.most} characters`;
    case 'codes':
      return value === null || isCodes(takes.pattern, value)
        ? null
        : `must be a list of ${takes.what}, each such as ${takes.example} and at most once`;
    case 'zone':
      return isZone(value) ? null : 'must be UTC or the name of a time zone such as Europe/Paris';
  }
}

export function settingInWords({ takes }: Setting, value: SettingValue): string {
  if (value === null) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'object') return value.length === 0 ? 'none' : value.join(', ');
  if (takes.kind === 'whole') return `${value} ${takes.unit}`;
  const choice = takes.kind === 'choice' ? takes.choices.find((one) => one.value === value) : undefined;
  return choice?.words ?? String(value);
}

type Choosing = Extract<SettingKind, { kind: 'choice' | 'some-of' }>;

function named({ choices }: Choosing): string {
  return choices.map(({ value }) => value).join(', ');
}

function isSomeOf({ choices }: Choosing, value: unknown): boolean {
  if (!Array.isArray(value) || new Set(value).size !== value.length) return false;
  return value.every((one) => choices.some((choice) => choice.value === one));
}

function isCodes(pattern: RegExp, value: unknown): boolean {
  if (!Array.isArray(value) || new Set(value).size !== value.length) return false;
  return value.every((one) => typeof one === 'string' && pattern.test(one));
}

function isText({ most, mayBeNone }: Extract<SettingKind, { kind: 'text' }>, value: unknown): boolean {
  if (value === null) return mayBeNone;
  return typeof value === 'string' && value.trim() !== '' && value.length <= most;
}

function isZone(value: unknown): boolean {
  try {
    return typeof value === 'string' && baseZone(value) === value;
  } catch (error) {
    if (error instanceof IntervalInputError) return false;
    throw error;
  }
}
