// The printing inks of the house: every drawing takes its colours from these tokens and no others.

export const ink = 'var(--ink, #1e1912)';
export const paper = 'var(--paper, #f5ecd9)';
export const paperDeep = 'var(--paper-deep, #e8d9b8)';
export const milk = 'var(--milk, #fffdf6)';
export const barn = 'var(--barn, #8f1f14)';
export const meadow = 'var(--meadow, #2b5a31)';
export const hay = 'var(--hay, #d19c3c)';
export const umber = 'var(--umber, #7b4a27)';
