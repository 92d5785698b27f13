/** The help of the verb `legs`, after its name. */
export const LEGS_HELP = `
  panel-season legs [PLAN] [options]

Which lengths to cut, how exact they must be, and everything for the workbench.
A leg of the plan marked "owned": true is kept in every set.

  --most N         most legs to cut, 0 to 4 [3]
  --for WHAT       what the set should be best at: "season total", "worst month", or "fewest short days"
                   on the plan's battery and loads (up to 2 legs of a dozen lengths) [season total]
  --set N          make the files (all but the sets, bands and rules) for the best set of N legs
                   [the plan's own legs; without any, the best set]

A leg that is cut already and stands too steep
  --measured DEG --wanted DEG   the tilt it gives and the tilt it should give: how much to cut off
  --read-from SIDE              what both angles are read from, ground or post: nothing is assumed

Files, each only when asked for
  --csv FILE       the best sets, one row a leg
  --settings FILE  flat and the legs: both readings, yields, tolerance, stowing, wind
  --tolerance FILE what 1 mm, 1 degree and a wrong bearing cost, by month
  --bands FILE     tilts within 1 % and 3 % of the best, by month
  --rules FILE     rules of thumb against the computed best
  --pieces FILE    pieces to saw
  --sheet FILE     the cutting sheet, a page to print (HTML)
  --gauge FILE     a tilt gauge to print at true size (SVG)
  --map FILE       the tilt-by-date map (SVG); --map-csv FILE its numbers
  --json           the whole answer as JSON on standard output
  --from --to --step --climate   as in season; short days are counted at the plan's worth.stepMinutes [60]
  --force          replace files that are there already

Examples
  panel-season legs
  panel-season legs my-plan.json --most 2 --set 2 --sheet sheet.html --gauge gauge.svg
  panel-season legs my-plan.json --for "worst month" --csv sets.csv
  panel-season legs my-plan.json --measured 41 --wanted 38 --read-from ground
`;
