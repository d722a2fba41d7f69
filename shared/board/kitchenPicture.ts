// What is drawn with the questions of the milking place and the kitchen.
import type { MilkingStepName } from './howToMilk.ts';

/** A kind of milk or cheese whose days are drawn. */
export interface KeptDays {
  readonly key: 'raw' | 'milk' | 'yogurt' | 'cheese';
  readonly days: number;
}

/** One drawing of these questions, by what it counts. */
export type KitchenPicture =
  | { readonly of: 'milking-steps'; readonly steps: readonly MilkingStepName[] }
  | { readonly of: 'cleaning'; readonly steps: readonly MilkingStepName[] }
  /** Short fats in a hundred drops of fat. */
  | { readonly of: 'short-fats'; readonly goat: number; readonly cow: number }
  | { readonly of: 'washing'; readonly seconds: number }
  /** The milk that goes in, mL, and the cheeses that come out, each of one unit. */
  | { readonly of: 'cheese'; readonly milk_mL: number; readonly wheels: number; readonly unit: 'lb' | 'kg' }
  | { readonly of: 'days-kept'; readonly rows: readonly KeptDays[] }
  | { readonly of: 'heated'; readonly minutes: number; readonly hot: string };
