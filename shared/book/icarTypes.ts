// Milking visits and test days of the ICAR animal data exchange, as far as a milk book needs them.

/** Who an event is about: an id, unique within its scheme. */
export interface IcarAnimal {
  readonly scheme: string;
  readonly id: string;
}

/** One visit to be milked (`icarMilkingVisitEventResource`). */
export interface IcarVisit {
  /** Its place in the file, from 1. */
  readonly place: number;
  readonly animal: IcarAnimal;
  /** When milking began, RFC 3339. */
  readonly at: string;
  readonly weight_kg: number;
  /** Weights of quarters or halves, where the file has any. */
  readonly parts_kg: readonly number[];
  readonly complete: boolean;
  /** `icarMilkingRemarksType`. */
  readonly remarks: readonly string[];
  readonly remark: string;
  /** The source has taken it back. */
  readonly deleted: boolean;
}

/** One result of a test day (`icarTestDayResultEventResource`). */
export interface IcarTest {
  readonly place: number;
  readonly animal: IcarAnimal;
  /** Null where the file does not say when: the schema does not ask for it. */
  readonly at: string | null;
  /** `Dry`, `SamplingImpossible` or `Sick`; null where nothing of the kind is said. */
  readonly code: string | null;
  readonly weight24h_kg: number | null;
  readonly characteristics: readonly {
    readonly name: string;
    readonly value: string;
    readonly unit: string | null;
  }[];
  readonly deleted: boolean;
}

/** The two kinds of event that the milk book reads. */
export interface IcarEvents {
  readonly visits: readonly IcarVisit[];
  readonly tests: readonly IcarTest[];
}

/** How an animal of such a file is named on a page and in the choices. */
export function animalName({ scheme, id }: IcarAnimal): string {
  return `${id} (${scheme})`;
}
