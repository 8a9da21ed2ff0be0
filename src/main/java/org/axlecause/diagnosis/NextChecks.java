package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.LookingOver.Unlooked;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.axlecause.shared.Decimals;

/** Chooses the checks that tell most per minute, and those that an opened axle calls for in any case. */
final class NextChecks {

    private static final int BITS_SCALE = 3;
    private static final int WHEEL_OFF = 2;

    private final CauseModel model;
    private final Layout layout;
    private final Possibilities possibilities;
    private final Evidence evidence;
    private final Suspects suspects;
    private final DiagnosisInput input;
    private final Chains chains;
    private final LookingOver lookingOver;
    private final CheckScore score;
    private final Information information;
    /** Numbers of the groups that are in doubt. */
    private final BitSet inDoubt = new BitSet();

    NextChecks(
            CauseModel model,
            Layout layout,
            Possibilities possibilities,
            Evidence evidence,
            Suspects suspects,
            DiagnosisInput input,
            Chains chains,
            LookingOver lookingOver) {
        this.model = model;
        this.layout = layout;
        this.possibilities = possibilities;
        this.evidence = evidence;
        this.suspects = suspects;
        this.input = input;
        this.chains = chains;
        this.lookingOver = lookingOver;
        this.score = new CheckScore(model, input);
        this.information = new Information(possibilities, suspects);
    }

    /** The checks worth making, best first. */
    List<NextCheck> best(List<Group> groups) {
        List<Group> doubtful = groups.stream().filter(this::inDoubt).toList();
        doubtful.forEach(group -> inDoubt.set(group.number()));
        List<Unlooked> unlooked = lookingOver.unlooked();
        List<NextCheck> best = new ArrayList<>();
        int named = 0;
        Set<String> taken = new HashSet<>();
        for (CheckOption option : first(doubtful)) {
            taken.add(key(option.check, option.place));
            best.add(next(option, false));
        }
        for (CheckOption option : options(doubtful)) {
            boolean asked = unlooked.stream().anyMatch(part -> part.at(option.check.code(), option.place));
            if ((asked || named < model.settings().most()) && taken.add(key(option.check, option.place))) {
                named += asked ? 0 : 1;
                best.add(next(option, asked));
            }
        }
        for (Unlooked part : unlooked) {
            Check check = model.check(part.check());
            if (taken.add(key(check, part.wheel())) && !forbidden(check)) {
                best.add(next(new CheckOption(at(check, part.wheel())), true));
            }
        }
        return best;
    }

    private static String key(Check check, Place place) {
        return check.code() + " " + place;
    }

    private CheckPlace at(Check check, Place place) {
        return possibilities.checks().stream()
                .filter(known -> known.is(check, place))
                .findFirst()
                .orElseGet(() -> CheckPlace.of(
                        model, layout, new Answers(model, layout), check, place, possibilities.candidates()));
    }

    /** Checks that come before all others: what a reading is worth is known before anything is taken apart for it. */
    private List<CheckOption> first(List<Group> doubtful) {
        List<CheckOption> first = new ArrayList<>();
        for (CheckPlace at : possibilities.checks()) {
            if (!at.firstAfter().isEmpty()
                    && !forbidden(at.check())
                    && !isOpened(at.place())
                    && isFirst(at, doubtful)
                    && makesSense(at)) {
                first.add(option(at, doubtful));
            }
        }
        return first;
    }

    private boolean isFirst(CheckPlace at, List<Group> doubtful) {
        return at.firstAfter().stream()
                        .anyMatch(sign -> doubtful.stream()
                                .anyMatch(group -> group.signs().contains(sign)))
                && at.firstShown().stream().anyMatch(evidence::open);
    }

    private CheckOption option(CheckPlace at, List<Group> doubtful) {
        CheckOption option = new CheckOption(at);
        int[] open = open(at);
        if (!mayTell(open)) {
            return option;
        }
        information.ask(open);
        for (Group group : doubtful) {
            double bits = information.about(group);
            option.bits += bits;
            if (bits > 0) {
                option.groups.add(group);
            }
        }
        return option;
    }

    /** Whether one of the signs is of a cause in one of the groups that are in doubt. */
    private boolean mayTell(int[] open) {
        for (int sign : open) {
            for (Possibilities.Showing showing : possibilities.showing(sign)) {
                Suspect suspect = suspects.of(showing.candidate());
                if (suspect != null && !suspect.certain && inDoubt.get(suspect.group)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Numbers of what the check could tell of and nobody has looked for yet. */
    private int[] open(CheckPlace at) {
        int[] all = possibilities.numbersOf(at);
        int[] open = new int[all.length];
        int count = 0;
        for (int sign : all) {
            if (suspects.known(sign) == Evidence.Known.OPEN) {
                open[count++] = sign;
            }
        }
        return Arrays.copyOf(open, count);
    }

    private boolean inDoubt(Group group) {
        if (group.signs().isEmpty()) {
            return false;
        }
        if (group.members().stream().anyMatch(this::lacksItsBeginning)) {
            return true;
        }
        boolean settled =
                group.signs().stream().filter(sign -> !sign.finding()).allMatch(sign -> isSettled(sign, group));
        return !settled && !ScopeDoubt.sameScope(group, possibilities, model.settings());
    }

    /**
     * Whether a settled cause accounts for the sign: one that shows it more often than not, or one that hardly shows it
     * where hardly any other is left that may as well and makes other work.
     */
    private boolean isSettled(Sign sign, Group group) {
        int number = possibilities.signs().numberOf(sign);
        double settled = model.settings().settledAt();
        boolean accounted = false;
        double rivals = 0;
        for (Suspect member : group.members()) {
            double shows = member.seen.of(number);
            if (shows > 0 && member.probability < settled) {
                rivals += makesOtherWork(member, group) ? member.probability : 0;
            } else if (shows > 0 && endsTheAsking(member)) {
                if (shows >= model.settings().accountsFrom()) {
                    return true;
                }
                accounted = true;
            }
        }
        return accounted && rivals < model.settings().rivalFrom();
    }

    /** Whether a cause calls for more than the proved causes beside it do. */
    private boolean makesOtherWork(Suspect suspect, Group group) {
        BitSet work = (BitSet) possibilities.scopeMarksOf(suspect.number).clone();
        group.members().stream()
                .filter(member -> member.certain)
                .forEach(member -> work.andNot(possibilities.scopeMarksOf(member.number)));
        return !work.isEmpty();
    }

    /** Whether a cause is as good as known that something else always brings about, and that is not known. */
    private boolean lacksItsBeginning(Suspect suspect) {
        return suspect.cause.neverFirst()
                && suspect.probability >= model.settings().sameScopeAt()
                && chains.confirmedAbove(suspect).isEmpty();
    }

    /** What may have brought about the causes that are as good as known and lack their beginning. */
    private Set<Candidate> missingBeginnings(List<Group> doubtful) {
        Set<Candidate> beginnings = new HashSet<>();
        for (Group group : doubtful) {
            group.members().stream()
                    .filter(this::lacksItsBeginning)
                    .flatMap(member -> chains.openAbove(member).stream())
                    .forEach(above -> beginnings.add(above.candidate));
        }
        return beginnings;
    }

    /** A chain ends the asking once its first cause is known, and a reading that may pass once it was repeated. */
    private boolean endsTheAsking(Suspect suspect) {
        boolean begins =
                !suspect.cause.neverFirst() || !chains.confirmedAbove(suspect).isEmpty();
        boolean repeated = suspect.certain
                || !suspect.cause.passes()
                || input.danger()
                || evidence.runAgain(suspect.candidate.place());
        return begins && repeated;
    }

    private boolean forbidden(Check check) {
        return input.danger() && check.drives() != null;
    }

    private boolean opensTooSoon(Check check, Place place) {
        return input.openingBarred() && check.access() >= WHEEL_OFF && !isOpened(place);
    }

    private boolean isOpened(Place place) {
        return place.axle() != null && input.openedAxles().contains(place.axle());
    }

    private List<CheckOption> options(List<Group> doubtful) {
        if (doubtful.isEmpty()) {
            return List.of();
        }
        Set<Candidate> beginnings = missingBeginnings(doubtful);
        List<CheckOption> options = new ArrayList<>();
        for (CheckPlace at : possibilities.checks()) {
            if (!forbidden(at.check()) && !opensTooSoon(at.check(), at.place()) && makesSense(at)) {
                CheckOption option = option(at, doubtful);
                boolean looksForBeginning = option.bits > 0
                        && !beginnings.isEmpty()
                        && at.settles().stream().anyMatch(beginnings::contains);
                if (option.bits >= model.settings().leastInformation() || looksForBeginning) {
                    options.add(option);
                }
            }
        }
        score.score(options);
        options.sort(Comparator.comparingDouble((CheckOption option) -> -option.score)
                .thenComparing(option -> option.check.code())
                .thenComparing(option -> option.place));
        return options;
    }

    /** Whether there is a reason for the check there, and nobody has made it. */
    private boolean makesSense(CheckPlace at) {
        return (at.needs() == null || evidence.sees(at.needs())) && !isRunOnceMore(at) && !isMade(at);
    }

    private boolean isMade(CheckPlace at) {
        for (Finding finding : input.findings()) {
            if (finding.check() == at.check().code() && covers(finding.place(), at.place())) {
                return true;
            }
        }
        return false;
    }

    /** Whether it is one more run of an axle that had two: what neither of them showed a third will not show. */
    private boolean isRunOnceMore(CheckPlace at) {
        return at.check().rollerTest() == BrakeSystem.SERVICE && evidence.runAgain(at.place());
    }

    private static boolean covers(Place found, Place asked) {
        return found.wheel().covers(asked) || asked.covers(found);
    }

    private NextCheck next(CheckOption option, boolean lookingOver) {
        Check check = option.check;
        return new NextCheck(
                check.code(),
                check.text(),
                option.place,
                Decimals.rounded(option.bits, BITS_SCALE),
                check.minutes() + score.accessMinutes(check, option.place),
                check.access(),
                check.risk(),
                check.cautions(),
                lookingOver,
                option.at.settles().stream().filter(this::isSuspected).toList(),
                option.at.answers());
    }

    private boolean isSuspected(Candidate candidate) {
        Suspect suspect = suspects.of(possibilities.numberOf(candidate));
        return suspect != null
                && !suspect.certain
                && suspect.probability >= model.settings().shownFrom();
    }
}
