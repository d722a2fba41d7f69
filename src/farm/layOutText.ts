// The words of a new farm folder: settings with a remark on each, headings, and how to fill them in.

// The part of farm.yaml on school visits. Every line is a remark, so that a new farm plans with the usual.
const VISIT_SETTINGS = `
# For school visits: what a group can do, in the order of a one-way loop. Take the # off, and walk the loop with a watch.
# Without this list the pages take the usual eleven: milking-stand, goat-barn, kid-pen, pasture-rail, hay-loft, hoof-and-coat,
# barn-board, measuring-table, practice-stand, kid-table, kitchen-window.
# capacity: children who have room at a time. walk: minutes from the station before it. standIn: what takes its place in
# rain, in winter, when a birth is near, or where a wheelchair cannot go. You may also write minutes (20, or
# { k-2: 15, 3-5: 20, 6-8: 25, 9-12: 35 }), zone (animal, between, clean), roofed, wheelchair, touch, milking, kidding (yes
# or no), and chosenFor, the grades whose groups go there when they choose nothing, for instance [k-2, 3-5].
# A station of your own needs a zone, and its texts in content/stations.
# stations:
#   - { id: goat-barn, capacity: 16, walk: 1 }
#   - { id: pasture-rail, capacity: 24, walk: 2, roofed: no, wheelchair: no, standIn: hay-loft }
#   - { id: hay-loft, capacity: 16, walk: 2 }

# Taps with soap at which visitors wash their hands. Take the # off:
# taps: 4

# What else a visit needs. The rules of your health department and of the school district go first.
# buses: how many can stand side by side. walks: minutes from the buses to the first place, and from any station to the taps.
# shownMilking: when you milk for visitors, if you keep the morning milking of some does for them, one doe for each group.
# kiddingPen: days on which the pen is closed before and after a birth; ask your veterinarian.
# lunchSlack: minutes that food may begin later than wished. busSpare: minutes left before the buses go.
# washing: spare is what is added for queues, 0.2 is a fifth; washing that takes longer than so many minutes together is
# done by one group after the other.
# In the last line, which each of k-2, 3-5, 6-8 and 9-12 may have, aim and most are children for one adult, group is how many
# one leader takes, wash and toilet are seconds for one child, and the rest are minutes.
# visits:
#   toilets: 4
#   seats: 60
#   buses: 1
#   walks: { gate: 3, taps: 2 }
#   shownMilking: { from: '09:45', to: '11:30' }
#   kiddingPen: { before: 14, after: 21 }
#   lunchSlack: 30
#   busSpare: 5
#   adults: { least: 2, childrenPerSpare: 60 }
#   washing: { spare: 0.2, together: 12 }
#   k-2: { aim: 6, most: 8, group: 8, wash: 75, toilet: 90, toiletWithin: 60, bus: 10, headCount: 3, lunch: 30, welcome: 8 }
`;

/** farm.yaml for a farm that has yet to write its name; it reads as it is. */
export function settingsText(timeZone: string): string {
  return `# What the pages need to know about your farm.
# Change the words after each colon and save. A line that starts with # is only a remark.

# Your farm's name, as it will stand at the top of pages and sheets.
name: Our farm

# Which clock the farm lives by, written Continent/City. This is what this computer says: check it.
timeZone: ${timeZone}

# What pages show: us (cups, quarts, gallons, pounds) or metric (litres, kilograms).
units: us

# The unit of an amount in the milk book that names none:
# cup, pt, qt, gal, fl oz, mL, L (by volume), or lb, oz, kg, g (by weight).
recordUnit: cup

# The languages of the pages: en (English), es (Spanish). The first one opens when nobody has chosen.
languages: [en, es]

# When you start milking, morning and evening.
milkings: { am: '06:30', pm: '17:30' }

# The jar that you fill, and that every picture of milk is drawn with: its size and a unit of volume.
jar: { size: 1, unit: qt }

# More than this from one doe at one milking is surely a slip: the book is then not taken until you have looked.
largestMilking: { amount: 10, unit: L }

# The screen on your barn's wall, across the glass from corner to corner (unit: in or cm). Take the # off this line:
# board: { screen: { diagonal: 21.5, unit: in } }

# "Today" is today, by the farm's clock. To see the pages as of another day, take the # off this line:
# asOf: '2026-05-21'

# Whom a teacher writes to, and what an emergency sheet says. Take the # off these lines.
# Write only what everybody may read. A line that you leave out is left blank on the sheet, to be written in by hand.
# contact:
#   name: Your name
#   place: Your town
#   email: visits@your-farm.example
#   phone: '555-0100'
#   address: the address that an ambulance is told
#   gate: how to find the gate
#   hospital: the nearest one with an emergency room, and its telephone
#   emergency: '911'
#   veterinarian: name and telephone
# Where others open these pages; it stands on paper that is printed on this machine.
#   site: https://your-farm.example/
${VISIT_SETTINGS}`;
}

/** Headings of each table, in the order in which a person fills them in. */
export const HEADINGS = Object.freeze({
  does: 'doe,name,breed,born,weight_kg',
  kiddings: 'doe,date,kids,apart,weaned,dry',
  treatments: 'doe,from,until,what,note',
  milkings: 'date,milking,doe,amount,unit,use,note,entered',
});

// The part of README.txt on does under treatment.
const TREATMENTS = `treatments.csv   one row each time a doe is treated and her milk is kept apart
  doe            her short name, as in does.csv
  from           the first day whose milk is kept apart
  until          the first day whose milk may be kept again, as the veterinarian or the label says,
                 counted from the last dose. Empty: she is still under treatment. Of several rows
                 the longest counts
  what           what was given
  note           anything
                 Milkings in between with nothing under use count as withheld
  Example:       clover,2026-04-12,2026-04-18,medicine for her foot,the veterinarian set the day

`;

// The part of README.txt on visits of schools.
const VISITS = `visits           only if schools come to you: make this folder yourself. One file a visit, whose name ends in
                 .yaml. The page /visits/ writes them from a teacher's link while "npm start" runs
  school         the school, or a code for it. It stands in your files alone: pages that anybody may
                 read tell only when the farm is taken. No child is named anywhere
  state          asked, agreed, held or called off
  date, arrive, leave
                 the day, and when the buses come and go, for instance '9:30'
  grade          K, or 1 to 12
  children, adults, buses
                 how many; adults are those who can lead a group
  lunch          the earliest time of food, or no
  stations, needs, rain, word, note
                 may be left out: [goat-barn, kid-pen], [wheelchair, asthma], yes, fern, anything
  Example:       school: Brook School
                 state: asked
                 date: '2026-05-27'
                 grade: 2
                 children: 24
                 adults: 5
                 arrive: '9:30'
                 leave: '12:30'

`;

// The part of README.txt on the voice of the Barn board.
const OWN_VOICE = `recordings       only if you want your own voice on the Barn board: make this folder yourself, with a folder
                 in it for each language (en, es). The page /recordings/ of your site lists every
                 sentence with its key, and tells how to name a recording
  say-as.txt     in such a folder: how the computer's voice shall say a name, one a line
  Example:       Wren = Ren
`;

/** README.txt: what each column holds, with an example row for each table. */
export function howToText(bookFile: string): string {
  return `HOW TO FILL THESE IN

Open the .csv files in any spreadsheet or text editor. Keep the first line of each: the pages find
their columns by it. When you save, choose "CSV UTF-8". Dates are written YYYY-MM-DD, for instance
2026-05-21. A cell that you have nothing for stays empty.

farm.yaml        the farm itself: its name, clock, units, and for school visits its stations, taps and whom
                 to write to. Each line has a remark above it.

does.csv         one row a doe
  doe            her short name for the milk book: letters, digits, - and _, no spaces. It becomes
                 part of her page's web address, so it should not change
  name           her name as people say it
  breed          her breed
  born           the date on which she was born
  weight_kg      her weight in kilograms (1 lb is 0.454 kg)
  Example:       clover,Clover,Nubian,2022-03-29,62

kiddings.csv     one row each time a doe has kids
  doe            her short name, as in does.csv
  date           the day on which she kidded
  kids           how many kids were born
  apart          the first morning after a night away from her kids: from then on you milk her in
                 the morning. Empty: the same day as weaned
  weaned         from this day on you milk her morning and evening
  dry            from this day on you do not milk her. Empty until then
                 Where the kids grow up on bottles, leave apart and weaned both empty: she is then
                 milked morning and evening from the day after she kidded
  Example:       clover,2026-03-03,2,2026-03-24,2026-05-09,

${TREATMENTS}${bookFile}
                 the milk book: one row a doe and a milking. You may have as many files in the
                 folder as you like, one a month or one a year: all that end in .csv count
  date           the day of the milking
  milking        am or pm
  doe            her short name, as in does.csv
  amount         how much: 11, 11.5, 11 1/2 and 11½ are all right
  unit           cup, pt, qt, gal, fl oz, mL, L, or lb, oz, kg, g. Empty: the recordUnit of farm.yaml
  use            kept (or empty) for milk that goes to the kitchen; withheld while she is under
                 treatment (nobody drinks it; for how long, the veterinarian and the label say);
                 fed to kids; lost when it was spilled after measuring
  note           anything
  entered        when you wrote the row, for instance 2026-05-21T06:40. You need it only to correct
                 a row: leave the wrong row, and write the right one below it with a later entered.
                 The latest row counts. A latest row without an amount strikes the entry out
  Example:       2026-05-21,am,clover,7 1/2,cup,kept,,2026-05-21T06:52

milk-tests.csv   only if a laboratory tests your milk: make it yourself, one row a doe and test day.
                 Its first line is date,doe,fat_pct,protein_pct,lactose_pct,scc
  fat_pct, protein_pct, lactose_pct
                 parts in 100 of milk. Empty: not tested
  scc            cells in a milliliter, in thousands: 850 for 850,000
  Example:       2026-05-19,clover,4.3,3.5,4.4,590

${VISITS}${OWN_VOICE}
If something in these files cannot be right, nothing is built, and you get one list that says file,
line and column, what is there, and what to do.
`;
}
