// What the pictures of the goats and their kids show: names and counts, no words of any language.

/** A doe as a picture names and draws her. */
export interface NamedDoe {
  readonly id: string;
  readonly name: string;
  readonly breed: string;
}

/** How the ears of a breed lie; `look` where the list names no breed whose ears are known. */
export type EarShape = 'upright' | 'long' | 'tiny' | 'look';

/** Where a doe is in her year, as the board's goat pages tell it. */
export type DoePlace = 'milked' | 'withKids' | 'dry';

/** Where the kids of a birth are, as far as their mother's phase tells it. */
export type KidPlace = 'mother' | 'apart' | 'bottle' | 'weaned';

/** A picture of goats: `what` says which. */
export type GoatPicture =
  /** Every doe's face; `mark` is a key under `barn.draw.mark`, what to look at. */
  | { readonly what: 'faces'; readonly does: readonly (NamedDoe & { readonly mark: string })[] }
  /** Does by age, the youngest first, with the line to count along. */
  | {
      readonly what: 'ages';
      readonly unit: 'years' | 'months';
      readonly rows: readonly { readonly age: number; readonly does: readonly NamedDoe[] }[];
    }
  | {
      readonly what: 'rest';
      readonly places: readonly { readonly place: DoePlace; readonly does: readonly NamedDoe[] }[];
    }
  /** A doe's mean day beside the nothing of the males; null where no day is known. */
  | {
      readonly what: 'males';
      readonly jar_mL: number;
      readonly milk_mL: number | null;
      /** The same in the day's unit, as text and as the number that its word agrees with. */
      readonly amount: string;
      readonly n: number;
    }
  /** Fields of view in degrees of the full circle. */
  | {
      readonly what: 'view';
      readonly least_deg: number;
      readonly most_deg: number;
      readonly person_deg: number;
      readonly slices: number;
      /** Slices that a goat and a person see, to the nearest one. */
      readonly seen: number;
      readonly personSeen: number;
    }
  | {
      readonly what: 'kids';
      readonly places: readonly { readonly place: KidPlace; readonly kids: number }[];
    }
  /** Births by the number of kids, the smallest litter first. */
  | { readonly what: 'litters'; readonly rows: readonly { readonly kids: number; readonly births: number }[] }
  | {
      readonly what: 'family';
      readonly mothers: readonly { readonly doe: NamedDoe; readonly kids: number }[];
    };
