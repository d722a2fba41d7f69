// Every kind of task, by name. To add one: write its file, and list it here.
import { type Band } from '../quantity/grade.ts';
import { addDays } from './addDays.ts';
import { addMilkings } from './addMilkings.ts';
import { amPmRatio } from './amPmRatio.ts';
import { betweenMilkings } from './betweenMilkings.ts';
import { claimCheck } from './claimCheck.ts';
import { countCups } from './countCups.ts';
import { dotPlot } from './dotPlot.ts';
import { equalJars } from './equalJars.ts';
import { errorBound } from './errorBound.ts';
import { evenOdd } from './evenOdd.ts';
import { evenOut } from './evenOut.ts';
import { farForecast } from './farForecast.ts';
import { fillJars } from './fillJars.ts';
import { fillUp } from './fillUp.ts';
import { joinMilkings } from './joinMilkings.ts';
import { keptPercent } from './keptPercent.ts';
import { kidsMilk } from './kidsMilk.ts';
import { largerToSmaller } from './largerToSmaller.ts';
import { lineOfFit } from './lineOfFit.ts';
import { linePlot } from './linePlot.ts';
import { markNumberLine } from './markNumberLine.ts';
import { meanAndSd } from './meanAndSd.ts';
import { meanWeek } from './meanWeek.ts';
import { medianRange } from './medianRange.ts';
import { missingPart } from './missingPart.ts';
import { moreOrLess } from './moreOrLess.ts';
import { orderCups } from './orderCups.ts';
import { otherSystem } from './otherSystem.ts';
import { pictureGraph } from './pictureGraph.ts';
import { rateAhead } from './rateAhead.ts';
import { residualPlot } from './residualPlot.ts';
import { residualTable } from './residualTable.ts';
import { scaledBars } from './scaledBars.ts';
import { shareOfWeek } from './shareOfWeek.ts';
import { steadierDoe } from './steadierDoe.ts';
import { sunToMilk } from './sunToMilk.ts';
import { chewCount } from './chewCount.ts';
import { cleanToCold } from './cleanToCold.ts';
import { goatOrCow } from './goatOrCow.ts';
import { grassToMilk } from './grassToMilk.ts';
import { modelSquare } from './modelSquare.ts';
import { readAndProve } from './readAndProve.ts';
import { statisticalQuestion } from './statisticalQuestion.ts';
import { weighAndSubtract } from './weighAndSubtract.ts';
import { blockGraph } from './blockGraph.ts';
import { bothWays } from './bothWays.ts';
import { checkClaim } from './checkClaim.ts';
import { clockFaces } from './clockFaces.ts';
import { dayGrid } from './dayGrid.ts';
import { decimalMilkings } from './decimalMilkings.ts';
import { equalParts } from './equalParts.ts';
import { farmNotes } from './farmNotes.ts';
import { farmTally } from './farmTally.ts';
import { goatEars } from './goatEars.ts';
import { goatNeeds } from './goatNeeds.ts';
import { goatParts } from './goatParts.ts';
import { grainCups } from './grainCups.ts';
import { lifeCircle } from './lifeCircle.ts';
import { likeParents } from './likeParents.ts';
import { matterLoop } from './matterLoop.ts';
import { milkingSteps } from './milkingSteps.ts';
import { minutesMilking } from './minutesMilking.ts';
import { penStory } from './penStory.ts';
import { readAndFind } from './readAndFind.ts';
import { readEvidence } from './readEvidence.ts';
import { readJug } from './readJug.ts';
import { recipeParts } from './recipeParts.ts';
import { roundAmounts } from './roundAmounts.ts';
import { timesAsMany } from './timesAsMany.ts';
import { traitsTable } from './traitsTable.ts';
import { trueOrNot } from './trueOrNot.ts';
import { watchAndDraw } from './watchAndDraw.ts';
import { percentChange } from './percentChange.ts';
import { twoBoxes } from './twoBoxes.ts';
import { sampleTheWeek } from './sampleTheWeek.ts';
import { directOrNot } from './directOrNot.ts';
import { lineByEye } from './lineByEye.ts';
import { curveInWords } from './curveInWords.ts';
import { woodPeak } from './woodPeak.ts';
import { lineOrCurve } from './lineOrCurve.ts';
import { afterThePeak } from './afterThePeak.ts';
import { energyYield } from './energyYield.ts';
import { carbonPath } from './carbonPath.ts';
import { kidOdds } from './kidOdds.ts';
import { letDownEvidence } from './letDownEvidence.ts';
import { watchByInterval } from './watchByInterval.ts';
import { weighingError } from './weighingError.ts';
import { twoWayTable } from './twoWayTable.ts';
import { outlierFence } from './outlierFence.ts';
import { sampleMeans } from './sampleMeans.ts';
import type { TaskKind } from './task.ts';
import { twoDays } from './twoDays.ts';
import { weekAtThisRate } from './weekAtThisRate.ts';
import { whatChangesMilk } from './whatChangesMilk.ts';

/** All kinds, band by band; within a band in the order that a sheet falls back on. */
export const TASK_KINDS: readonly TaskKind[] = Object.freeze([
  countCups, moreOrLess, joinMilkings, pictureGraph, fillJars, orderCups, missingPart, twoDays, addDays, evenOdd, fillUp, kidsMilk,
  trueOrNot, blockGraph, clockFaces, goatEars, penStory, equalParts, farmTally, goatNeeds, likeParents, milkingSteps, readAndFind, watchAndDraw,
  markNumberLine, addMilkings, scaledBars, equalJars, largerToSmaller, evenOut, betweenMilkings, linePlot, weekAtThisRate, sunToMilk,
  checkClaim, dayGrid, decimalMilkings, readJug, roundAmounts, timesAsMany, bothWays, grainCups, recipeParts, minutesMilking,
  readEvidence, lifeCircle, traitsTable, goatParts, matterLoop, farmNotes,
  meanWeek, medianRange, dotPlot, shareOfWeek, rateAhead, otherSystem, amPmRatio, keptPercent, whatChangesMilk,
  statisticalQuestion, readAndProve, goatOrCow, grassToMilk, modelSquare, cleanToCold, weighAndSubtract, chewCount,
  percentChange, twoBoxes, sampleTheWeek, directOrNot, lineByEye, curveInWords,
  lineOfFit, residualTable, residualPlot, meanAndSd, claimCheck, farForecast, errorBound, steadierDoe,
  woodPeak, lineOrCurve, afterThePeak, energyYield, carbonPath, kidOdds, letDownEvidence, watchByInterval, weighingError, twoWayTable, outlierFence, sampleMeans,
]); // prettier-ignore

/** The kind of a name, or null. */
export function kindNamed(name: string): TaskKind | null {
  return TASK_KINDS.find((kind) => kind.name === name) ?? null;
}

/** The names of a band's kinds. */
export function kindsOf(band: Band): readonly TaskKind[] {
  return TASK_KINDS.filter((kind) => kind.bands.includes(band));
}
