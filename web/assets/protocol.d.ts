// Generated from the Go types by go run ./schema generate; do not edit.
export const VERSION: number;
export const MAX_FILE_BYTES: number;
export const MAX_STEPS: number;

// A quote as the core keeps it; the page hands it on and looks at its signature alone.
export interface Draft {
  issued?: string;
  [field: string]: unknown;
}

export interface Act {
  do: string;
  id?: string;
  value?: string;
  on?: boolean;
  said?: string;
  button?: string;
  file?: string;
  random?: string;
}

export interface Request {
  v: number;
  acts: Act[];
  draft?: Draft;
  view?: unknown;
  pins?: unknown;
  today?: string;
  base?: string;
  kept?: boolean;
  unkept?: string;
  elsewhere?: boolean;
  costs?: boolean;
  saved?: Saved[];
  copies?: Copies;
  trail?: Moment[];
  weighed?: unknown;
  bids?: string;
  key?: string;
  undo?: number;
  redo?: number;
  shown?: string;
}

export interface Reply {
  draft?: Draft;
  view?: View;
  pins: string[];
  regions?: Record<string, (string | null)[]>;
  shown?: string;
  title?: string;
  say?: string;
  notice?: string;
  said?: string;
  gist: Gist;
  fault?: string;
  do?: Step[];
  partial?: boolean;
  undecided?: boolean;
  working?: boolean;
  rehearsed?: boolean;
  private?: boolean;
}

export interface Export {
  format: string;
  quotes: KeptQuote[];
  catalogue?: string;
  bids?: string;
  key?: SealedKey;
  costs?: string;
  sealed?: string;
}

export interface Saved {
  id: string;
  name: string;
  line: string;
  when: string;
  here: boolean;
  number?: string;
  rev?: number;
}

export interface Copies {
  when?: string;
  changed?: number;
  able?: boolean;
  folder?: string;
  waits?: boolean;
  lasting?: boolean;
  sealed?: boolean;
  spoiled?: boolean;
}

export interface Moment {
  n: number;
  said: string;
  when: string;
  here: boolean;
}

export interface View {
  area: string;
  chapter: string;
  metric?: boolean;
  theme?: string;
  asked?: string;
  search?: string;
  opened?: string[];
  look?: string;
  fresh?: string[];
  address?: string;
  ticket?: unknown;
  chance?: number;
  late?: boolean;
  mountings?: boolean;
  foreign?: string;
  find?: string;
  parts?: string[];
  proposed?: string;
  paper?: string;
  large?: boolean;
  brought?: string[];
  key_saved?: boolean;
  reading?: boolean;
  frozen?: Frozen;
  alone?: boolean;
  rivals?: unknown[];
  names?: Record<string, string>;
  guide?: number;
  guide_off?: boolean;
  typed?: Record<string, string>;
  wrong?: Record<string, string>;
  list: ListView;
  told?: Told;
  standing: Record<string, Own>;
  own_item: OwnItem;
  heard?: Heard;
}

export interface Gist {
  name: string;
  line: string;
  issued?: string;
  number?: string;
  rev?: number;
  weighed?: unknown[];
}

export interface Step {
  do: string;
  id?: string;
  name?: string;
  type?: string;
  text?: string;
  base64?: boolean;
  gist?: Gist;
  screen?: Record<string, string>;
}

export interface KeptQuote {
  id: string;
  name: string;
  line: string;
  saved: string;
  draft: Draft;
  pins: string[];
  steps: KeptStep[];
  at: number;
  weighed?: unknown[];
}

export interface SealedKey {
  sealed: string;
  public: string;
}

export interface Frozen {
  e: string;
  c: string;
  b: string;
  t: string;
  u: string;
  d: string;
  s: string;
  p: number;
}

export interface ListView {
  show?: string;
  from?: number;
  taking?: boolean;
  read?: number;
}

export interface Told {
  at: string;
  area: string;
  changes: ToldChange[];
  asked?: ToldNeed[];
  aboard?: ToldLoad[];
  total: Amount;
  payload_lb: number;
  safe: string;
  terms?: Record<string, Amount>;
}

export interface Own {
  pick?: string;
  verdict?: string;
  answer?: string;
  meant?: string;
  asks?: boolean;
}

export interface OwnItem {
  name?: string;
  mass?: string;
  length?: string;
  width?: string;
  height?: string;
  place?: string;
}

export interface Heard {
  place?: string;
  area?: string;
  broken?: Record<string, string>;
  checks?: string[];
  total: Amount;
  payload?: string;
  likely: string;
}

export interface KeptStep {
  draft: Draft;
  said: string;
  when: string;
}

export interface ToldChange {
  id: string;
  added?: boolean;
  instead?: string;
  cause?: string;
  own?: boolean;
  line?: string;
}

export interface ToldNeed {
  label: string;
  was?: string;
  is?: string;
}

export interface ToldLoad {
  id: string;
  by: number;
}

export interface Amount {
}
