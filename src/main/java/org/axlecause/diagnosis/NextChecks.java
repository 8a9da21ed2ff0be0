package org.axlecause.diagnosis;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.axlecause.diagnosis.Groups.Group;
import org.axlecause.diagnosis.LookingOver.Unlooked;
import org.axlecause.diagnosis.Suspects.Suspect;
import org.axlecause.facts.Axle;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.Place;
import org.axlecause.facts.SymptomCode;
import org.jspecify.annotations.Nullable;

/** Chooses the checks that tell most per minute, and those that an opened axle calls for in any case. */
final class NextChecks {

    private static final int BITS_SCALE = 3;
    private static final int WHEEL_OFF = 2;

    private final CauseModel model;
    private final Layout layout;
    private final Evidence evidence;
    private final Suspects suspects;
    private final DiagnosisInput input;
    private final Answers answers;
    private final Chains chains;
    private final LookingOver lookingOver;
    private final CheckScore score;

    NextChecks(
            CauseModel model,
            Layout layout,
            Evidence evidence,
            Suspects suspects,
            DiagnosisInput input,
            Chains chains,
            LookingOver lookingOver) {
        this.model = model;
        this.layout = layout;
        this.evidence = evidence;
        this.suspects = suspects;
        this.input = input;
        this.answers = new Answers(model, layout);
        this.chains = chains;
        this.lookingOver = lookingOver;
        this.score = new CheckScore(model, input);
    }

    /** The checks worth making, best first. */
    List<NextCheck> best(List<Group> groups) {
        List<Group> doubtful = groups.stream().filter(this::inDoubt).toList();
        List<CheckOption> options = options(doubtful);
        List<Unlooked> unlooked = lookingOver.unlooked();
        List<NextCheck> best = new ArrayList<>();
        int named = 0;
        Set<String> taken = new HashSet<>();
        for (CheckOption option : first(doubtful)) {
            taken.add(key(option));
            best.add(next(option, false));
        }
        for (CheckOption option : options) {
            boolean asked = unlooked.stream().anyMatch(part -> part.at(option.check.code(), option.place));
            if (taken.contains(key(option))) {
                continue;
            }
            if (asked || named < model.settings().most()) {
                named += asked ? 0 : 1;
                taken.add(key(option));
                best.add(next(option, asked));
            }
        }
        for (Unlooked part : unlooked) {
            Check check = model.check(part.check());
            if (taken.add(check.code() + " " + part.wheel()) && !forbidden(check)) {
                best.add(next(new CheckOption(check, part.wheel()), true));
            }
        }
        return best;
    }

    /** Checks that come before all others: what a reading is worth is known before anything is taken apart for it. */
    private List<CheckOption> first(List<Group> doubtful) {
        List<CheckOption> first = new ArrayList<>();
        for (Check check : model.checks()) {
            if (check.firstAfter().isEmpty() || forbidden(check)) {
                continue;
            }
            for (Place place : layout.places(check.level())) {
                if (makesSense(check, place) && !isOpened(place) && isFirst(check, place, doubtful)) {
                    CheckOption option = new CheckOption(check, place);
                    List<Sign> open = openSigns(check, place);
                    for (Group group : doubtful) {
                        option.bits += Information.of(open, group, suspects, model);
                    }
                    first.add(option);
                }
            }
        }
        return first;
    }

    private boolean isFirst(Check check, Place place, List<Group> doubtful) {
        boolean unknown = check.shows().stream()
                .limit(1)
                .flatMap(symptom -> signs(symptom, place).stream())
                .anyMatch(evidence::open);
        return unknown
                && check.firstAfter().stream()
                        .flatMap(symptom -> signs(symptom, place).stream())
                        .anyMatch(sign -> doubtful.stream()
                                .anyMatch(group -> group.signs().contains(sign)));
    }

    private Set<Sign> signs(SymptomCode symptom, Place place) {
        TreeSet<Sign> signs = new TreeSet<>();
        addSymptom(symptom, place, signs);
        return signs;
    }

    private static String key(CheckOption option) {
        return option.check.code() + " " + option.place;
    }

    private boolean inDoubt(Group group) {
        if (group.signs().isEmpty()) {
            return false;
        }
        boolean settled = group.signs().stream()
                .filter(sign -> !sign.finding())
                .allMatch(sign -> group.members().stream()
                        .anyMatch(member -> member.seen.containsKey(sign)
                                && member.probability >= model.settings().settledAt()
                                && endsTheAsking(member)));
        return !settled && !ScopeDoubt.sameScope(group, layout, model.settings());
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
        List<CheckOption> options = new ArrayList<>();
        for (Check check : model.checks()) {
            if (forbidden(check)) {
                continue;
            }
            for (Place place : layout.places(check.level())) {
                if (makesSense(check, place) && !opensTooSoon(check, place)) {
                    CheckOption option = new CheckOption(check, place);
                    List<Sign> open = openSigns(check, place);
                    for (Group group : doubtful) {
                        double bits = Information.of(open, group, suspects, model);
                        option.bits += bits;
                        if (bits > 0) {
                            option.groups.add(group);
                        }
                    }
                    if (option.bits >= model.settings().leastInformation()) {
                        options.add(option);
                    }
                }
            }
        }
        score.score(options);
        options.sort(Comparator.comparingDouble((CheckOption option) -> -option.score)
                .thenComparing(option -> option.check.code())
                .thenComparing(option -> option.place));
        return options;
    }

    private boolean makesSense(Check check, Place place) {
        boolean fits = place.axle() == null
                ? layout.vehicle().axles().stream().anyMatch(check::fits)
                : fits(check, layout.axleOf(place));
        SymptomCode needed = check.needsSymptom();
        return fits
                && (needed == null || evidence.sees(new Sign(needed.toString(), false, place)))
                && input.findings().stream()
                        .noneMatch(finding -> finding.check() == check.code() && covers(finding.place(), place));
    }

    private static boolean fits(Check check, @Nullable Axle axle) {
        return axle != null && check.fits(axle);
    }

    private static boolean covers(Place found, Place asked) {
        return found.wheel().covers(asked) || asked.covers(found);
    }

    private List<Sign> openSigns(Check check, Place place) {
        TreeSet<Sign> signs = new TreeSet<>();
        for (SymptomCode symptom : check.shows()) {
            addSymptom(symptom, place, signs);
        }
        for (Check.Outcome outcome : check.outcomes()) {
            if (outcome.symptom() != null) {
                addSymptom(outcome.symptom(), place, signs);
            } else if (outcome.finding() != null) {
                FindingEvidence finding = model.finding(outcome.finding());
                for (Place at : layout.at(finding.level(), place)) {
                    if (finding.on() == null || finding.on() == layout.brakeOf(at)) {
                        signs.add(new Sign(finding.code(), true, at));
                    }
                }
            }
        }
        return signs.stream().filter(evidence::open).toList();
    }

    private void addSymptom(SymptomCode symptom, Place place, Set<Sign> signs) {
        for (Place at : layout.at(model.symptom(symptom).level(), place)) {
            signs.add(new Sign(symptom.toString(), false, at));
        }
    }

    private NextCheck next(CheckOption option, boolean lookingOver) {
        Check check = option.check;
        return new NextCheck(
                check.code(),
                check.text(),
                option.place,
                BigDecimal.valueOf(option.bits).setScale(BITS_SCALE, RoundingMode.HALF_EVEN),
                check.minutes() + score.accessMinutes(check, option.place),
                check.access(),
                check.risk(),
                check.cautions(),
                lookingOver,
                settles(check, option.place),
                answers.of(check, option.place));
    }

    private List<Candidate> settles(Check check, Place place) {
        TreeSet<Candidate> settled = new TreeSet<>();
        List<String> findings = answers.findingsOf(check);
        for (Suspect suspect : suspects.all()) {
            if (!suspect.certain && suspect.probability >= model.settings().shownFrom()) {
                for (String code : findings) {
                    boolean speaks = speaks(suspect.cause, code);
                    if (speaks
                            && layout.at(model.finding(code).level(), place).stream()
                                    .anyMatch(at -> at.meets(suspect.candidate.place()))
                            && suspect.candidate.place().meets(place)) {
                        settled.add(suspect.candidate);
                    }
                }
            }
        }
        return List.copyOf(settled);
    }

    private static boolean speaks(Cause cause, String code) {
        return cause.provedBy().stream().anyMatch(together -> together.contains(code))
                || cause.refutedBy().stream().anyMatch(together -> together.contains(code));
    }
}
