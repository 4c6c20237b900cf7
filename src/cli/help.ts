export const HELP = `Gritwright works out what a bowling ball's surface will do on the lane.

  gritwright plan FILE       compare finishes for one ball, bowler and lane, and pick one
  gritwright shot FILE       follow one shot from the foul line to the pins
  gritwright carry FILE      say how pins fall at a hit, and which hits explain what was left
  gritwright bag FILE        which ball with which finish, at which stage of a session
  gritwright transition FILE what play does to the oil, game by game
  gritwright delivery FILE   a bowler's speed, revs, axis and positive axis point from filmed shots
  gritwright video FILE      a shot's course, speed and angles from where a video shows lane and ball, each with its error
  gritwright trial TRIAL JOB where one ball arrived on one line with some finishes, and what that says for the plan
  gritwright correct FILE    what the shots seen in a house say of its oil and lanes
  gritwright diagnose FILE   what may be wrong, and the cheapest step that tells
  gritwright stages FILE     write the bench work of a ball or a batch, or check a recipe
  gritwright fade FILE       follow a finish over the games, and say what is due when
  gritwright padwork FILE    say how evenly pads work a ball, and what each side does in it
  gritwright limits FILE     hold a ball's measures against a rule book of a day, and an event's rules
  gritwright readings FILE   say whether the sides agree, and which to go back to
  gritwright profile FILE…   roughness from measured profiles: CSV, TXT, X3P, SMD
  gritwright gauge FILE      how far a tester and the people who use it can be believed

  gritwright backup FOLDER             back up a shop's records, also while they are used
  gritwright verify FILE               read a backup through and compare its checksums
  gritwright restore FILE FOLDER       put a backup in the place of a shop's records, which stay beside it
  gritwright export FOLDER INTO        write everything that is kept as JSON and tables
  gritwright import KIND FILE FOLDER   show what a table of bowlers or balls would add, or add it
  gritwright undo ID FOLDER            take out what an import added
  gritwright shops FOLDER              list the shops that share a database, or add one
  gritwright move --from FOLDER --to ADDRESS   move everything elsewhere, checked row by row

  gritwright serve                     serve the page and the records; --install-service starts it with the machine
  gritwright update FILE.tgz           bring in a newer version, and go back by itself where it is not well
  gritwright certificate FOLDER --name NAME…   make the certificate for the shop's network
  gritwright completion SHELL          print what makes bash, zsh or fish complete commands and options

gritwright COMMAND --help tells a command's options, with examples.

Instead of FOLDER all of these take ADDRESS, postgres://USER@HOST/DATABASE; backup then wants a folder too: backup ADDRESS FOLDER.

FILE is a job file (plan, shot), a bench file (stages, fade) or a file of the command's own, in YAML or JSON; see docs/ and examples/.
For a FILE that is read, - is standard input.

  --json            print one document of data instead of text
  --svg FILE        draw the picture into a file, or with - to standard output (plan, shot: lane chart; carry: strikes; fade: curve; padwork: ball)
  --seed N          draw at random from this seed instead of the job file's
  --workers N       plan, bag, trial: threads to compute in
  --worlds N        plan: in how many worlds (64), or as many as there are
  --at FT,FT,…      shot: where to take samples, ft from the foul line (15,30,45,59.5,60)
  --taps FILE       video: FILE is a film (ffmpeg decodes it); where the lane is in its first picture
  --cutoff MM       profile: λc; else by the standard's table
  --short-cutoff MM profile: λs; else none
  --form WORD       profile: none, line (usual) or arc
  --x-unit, --z-unit WORD   profile: units of columns whose heading names none (usual: mm, um)
  --on DATE         limits: day of play, 2026-05-31; else the file's, else today
  --book ID         limits: usbc or world-bowling; else the file's
  --due             backup: the daily one, where it is time; older ones are thinned out
  --whole           backup: one file with photos and files in it, to be kept elsewhere by itself
  --without-lost-files   restore: also where photos or files of the backup are lost; names what it left out
  --apply           import: write it
  --map COL=FIELD,… import: which column feeds which field; else by their names
  --by INITIALS     import, undo: who does it, where several work in the shop
  --shop NAME       backup, export, import, undo: which shop, where several share a database
  --add NAME        shops: add a shop of this name
  --from, --to PLACE   move: a folder or an address each; called again where it was cut, it goes on
  --take-back       move: open what was moved away (--from) again
  -h, --help        this text
  -v, --version     the version

It ends with 0 when there is an answer, 1 when something of ours broke, 2 when the input cannot be used, 3 when a check failed.
`;
