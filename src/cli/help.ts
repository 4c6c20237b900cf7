export const HELP = `Gritwright works out what a bowling ball's surface will do on the lane.

  gritwright plan FILE    compare finishes for one ball, bowler and lane, and pick one
  gritwright shot FILE    follow one shot from the foul line to the pins

FILE is a job file in YAML or JSON; see docs/job-file.md and examples/.

  --json            print one document of data instead of text
  --svg FILE        draw the lane chart into a file
  --seed N          draw at random from this seed instead of the job file's
  --workers N       plan: threads to compute in
  --at FT,FT,…      shot: where to take samples, ft from the foul line (15,30,45,59.5,60)
  -h, --help        this text
  -v, --version     the version

It ends with 0 when there is an answer, 1 when something of ours broke, 2 when the input cannot be used, 3 when a check failed.
`;
