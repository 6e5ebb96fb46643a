/*
 * The dialogue of PROTOCOL.md, section 6, small enough to be searched whole by spin: one session of a few frames, a line that loses
 * and doubles frames both ways, a logger that loses its power, a card that is changed for another with a session of the same number,
 * a host that is killed and started again, a host that repeats itself too early.
 *
 * README.md beside this file names, for each step marked (n) here, the test that stands for it in the real code.
 */

#ifndef BLOCKS
#define BLOCKS 3            /* frames of the session */
#endif
#ifndef FAULTS
#define FAULTS 2            /* frames lost or doubled, both ways together */
#endif
#ifndef REBOOTS
#define REBOOTS 1           /* power cuts of the logger */
#endif
#ifndef KILLS
#define KILLS 1             /* kill -9 of the host */
#endif
#ifndef EARLY
#define EARLY 1             /* requests repeated although their answer is on its way */
#endif
#define WINDOW (BLOCKS + 1) /* requests on their way at once */
#define PROBE BLOCKS        /* a range of no bytes: only its end is of use */
#define QUEUE (BLOCKS + 1)  /* ranges that the logger keeps */
#ifndef LINE
#define LINE 2              /* frames that one direction of the line holds */
#endif
#define ALL ((1 << BLOCKS) - 1)

mtype = { NOTHING, HELLO, HELLO_ANSWER, FETCH, DATA, FETCH_END, CONFIRM, CONFIRMED, DOES_NOT_AGREE };

/*
 * A frame: what it is, the block, and which card's bytes these are (0 or 1: what a CRC over them tells apart). A request's tag is its
 * block's number here: fewer tags than the real 256, so stale frames are taken for new ones more often than they can be. The bit of
 * a FETCH says whether its end is wanted.
 */
chan toLogger = [LINE] of { mtype, byte, bit };
chan toHost = [LINE] of { mtype, byte, bit };

byte faults = FAULTS;
byte early = EARLY;
bit card = 0;               /* the card in the logger */
bool noted = false;         /* on that card: the host has the session */
bool done = false;          /* the host has heard so */

/* The archive: on the host's disk, so that a kill leaves it as it is. */
byte stored = 0;            /* bit n: block n is there ... */
byte storedCard = 0;        /* bit n: ... and this card's bytes they are */

#define has(set, n) (((set) >> (n)) & 1)
#define storedIsWhole(which) (stored == ALL && storedCard == (which -> ALL : 0))

/* (1) sent, (2) lost, (3) doubled. */
inline send(line, kind, block, which)
{
  if
  :: line ! kind, block, which
  :: atomic { faults > 0 -> faults--; skip }
  :: atomic { faults > 0 && len(line) + 2 <= LINE -> faults--; line ! kind, block, which; line ! kind, block, which }
  fi
}

inline empty_out(queue, scratch)
{
  do
  :: nempty(queue) -> queue ? scratch
  :: empty(queue) -> break
  od;
  scratch = 0
}

inline drop_ranges(scratch)
{
  do
  :: nempty(waiting) -> waiting ? scratch, _
  :: empty(waiting) -> break
  od;
  scratch = 0
}

active proctype logger()
{
  chan waiting = [QUEUE] of { byte, bit };
  mtype answer = NOTHING;
  bool endDue = false;
  byte block, last = 0, reboots = REBOOTS;
  bit which, wanted = 0;

#ifdef SENDS_UNTIL_DONE
#define MAY_READ (answer == NOTHING && empty(waiting) && !endDue)
#else
#define MAY_READ true
#endif

end:
  do
  /* (4) a greeting drops what was asked for before */
  :: atomic { MAY_READ && toLogger ? [HELLO, block, which] -> toLogger ? HELLO, block, which;
       drop_ranges(block); endDue = false; answer = HELLO_ANSWER; block = 0; which = 0 }
  /* (5) a range joins the queue, (6) unless it waits already, (7) or too many do */
  :: atomic { MAY_READ && toLogger ? [FETCH, block, which] -> toLogger ? FETCH, block, which;
       if
       :: waiting ?? [eval(block), _]
       :: !(waiting ?? [eval(block), _]) && nfull(waiting) -> waiting ! block, which
       :: !(waiting ?? [eval(block), _]) && full(waiting)
       fi;
       block = 0; which = 0 }
  /* (8) a confirm is compared with the card, and noted only when it agrees */
  :: atomic { MAY_READ && toLogger ? [CONFIRM, block, which] -> toLogger ? CONFIRM, block, which;
       drop_ranges(last); endDue = false;
       if
       :: block == ALL && which == card ->
#ifndef NOTES_WITHOUT_COMPARING
            assert(storedIsWhole(card));
#endif
            noted = true; answer = CONFIRMED
#ifdef NOTES_WITHOUT_COMPARING
       :: else -> noted = true; answer = CONFIRMED
#else
       :: else -> answer = DOES_NOT_AGREE
#endif
       fi;
       block = 0; which = 0 }
  /* (9) one frame at a time, an answer first; it reads again before the next */
  :: nfull(toHost) && answer != NOTHING -> send(toHost, answer, 0, card); answer = NOTHING
  :: nfull(toHost) && answer == NOTHING && !endDue && nempty(waiting) -> waiting ? last, wanted; endDue = wanted; wanted = 0;
       if
       :: last != PROBE -> send(toHost, DATA, last, card)
       :: else
       fi
  /* (10) this range has been sent, and all before it */
  :: nfull(toHost) && answer == NOTHING && endDue -> endDue = false; send(toHost, FETCH_END, last, card)
  /* (11) a power cut; (12) perhaps another card when it comes back */
  :: atomic { reboots > 0 && !done -> reboots--; drop_ranges(last); endDue = false; answer = NOTHING; last = 0;
       if
       :: skip
       :: !noted -> card = 1 - card
       fi }
  od
}

inline probe()
{
  if
  :: requested ?? [PROBE]
  :: !(requested ?? [PROBE]) -> requested ! PROBE
  fi;
  send(toLogger, FETCH, PROBE, 1)
}

active proctype host()
{
  chan requested = [WINDOW] of { byte };
  byte gathered = 0, gatheredCard = 0;  /* in memory, not on the disk yet */
  byte wanted, block, other, kills = KILLS;
  bit which;
  mtype kind;

#define here (stored | gathered)

greet:
  send(toLogger, HELLO, 0, 0);
  do
  :: atomic { toHost ? kind, block, which -> block = 0; which = 0;
       if
       :: kind == HELLO_ANSWER -> kind = NOTHING; break
       :: else -> kind = NOTHING
       fi }
  /* (13) silence: ask again */
  :: timeout -> send(toLogger, HELLO, 0, 0)
  :: atomic { kills > 0 -> kills--; goto greet }
  od;

fetch:
  wanted = ALL & ~here;
  empty_out(requested, block);
  do
  :: here == ALL -> break
  /* (14) some requests are always on their way */
  :: atomic { here != ALL && wanted != 0 && nfull(requested) ->
       block = 0;
       do
       :: has(wanted, block) -> break
       :: else -> block++
       od;
       wanted = wanted & ~(1 << block);
       which = (wanted == 0);
       requested ! block };
     send(toLogger, FETCH, block, which);
     block = 0; which = 0
  :: here != ALL && toHost ? [kind, block, which] -> atomic { toHost ? kind, block, which;
       if
       :: kind == DATA || kind == FETCH_END ->
            /* (15) what this frame overtook is lost, and wanted again at once */
            if
            :: requested ?? [eval(block)] ->
                 do
                 :: requested ? other ->
                      if
                      :: other == block && kind == DATA -> break
                      :: other == block && kind == FETCH_END -> wanted = wanted | (1 << block); break
                      :: else -> wanted = wanted | (1 << other)
                      fi
                 od
            :: else
            fi;
            /* (16) taken once, however often it comes */
            if
            :: kind == DATA && !has(here, block) -> gathered = gathered | (1 << block); gatheredCard = gatheredCard | (which << block)
            :: else
            fi;
            wanted = wanted & ALL & ~here
       :: else
       fi;
       kind = NOTHING; block = 0; which = 0; other = 0 }
  /* (17) a part is written to the disk: all of it or nothing */
  :: gathered != 0 -> atomic { stored = stored | gathered; storedCard = storedCard | gatheredCard; gathered = 0; gatheredCard = 0 }
  /* (18) silence: the end of a range of no bytes tells what is lost; (19) or the host only thinks that it is silent */
  :: here != ALL && timeout -> probe()
  :: atomic { here != ALL && early > 0 && nempty(requested) -> early-- }; probe()
  /* (20) killed: what was not on the disk is gone, and asked for again */
  :: atomic { kills > 0 -> kills--; gathered = 0; gatheredCard = 0; goto greet }
  od;

#ifndef CONFIRMS_BEFORE_STORING
  atomic { stored = stored | gathered; storedCard = storedCard | gatheredCard; gathered = 0; gatheredCard = 0 };
#endif

confirm:
  /* (21) length and CRC of what is stored: of a mixture of two cards it is neither's */
  which = ((storedCard | gatheredCard) != 0 -> 1 : 0);
  block = ((storedCard | gatheredCard) == (which -> ALL : 0) -> ALL : 0);
  send(toLogger, CONFIRM, block, which);
  do
  :: atomic { toHost ? kind, block, which -> block = 0; which = 0;
       if
       :: kind == CONFIRMED -> break
       /* (22) set aside, and once more from the beginning */
       :: kind == DOES_NOT_AGREE -> stored = 0; storedCard = 0; gathered = 0; gatheredCard = 0; kind = NOTHING; goto fetch
       :: else -> kind = NOTHING
       fi }
  :: timeout -> goto confirm
  :: atomic { kills > 0 -> kills--; gathered = 0; gatheredCard = 0; goto greet }
  od;

  /* What the logger may give up, the archive has. */
  assert(noted);
  assert(storedIsWhole(card));
  done = true
}

/* Whatever happens a bounded number of times, the session is in the archive in the end, and both ends know it. */
ltl completes { <> done }
