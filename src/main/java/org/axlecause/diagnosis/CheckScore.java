package org.axlecause.diagnosis;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/** Weighs what a check tells against its minutes, the access that it needs and the harm that it can do. */
final class CheckScore {

    private static final int OPENED = 3;
    private static final double JUST_BELOW = 0.999;

    private final CauseModel model;
    private final DiagnosisInput input;

    CheckScore(CauseModel model, DiagnosisInput input) {
        this.model = model;
        this.input = input;
    }

    /** Access is shared by all options that it opens up; harm counts as minutes; no harm where less tells as much. */
    void score(List<CheckOption> options) {
        Map<Access, Integer> sharing = new HashMap<>();
        for (CheckOption option : options) {
            option.accessMinutes = accessMinutes(option.check, option.place);
            sharing.merge(Access.of(option), 1, Integer::sum);
        }
        for (CheckOption option : options) {
            double access = (double) option.accessMinutes / sharing.getOrDefault(Access.of(option), 1);
            double minutes = option.check.minutes()
                    + access
                    + model.settings().riskMinutes().getOrDefault(option.check.risk(), 0);
            option.score = option.bits / minutes;
        }
        for (Risk risk : EnumSet.range(Risk.LOW, Risk.HIGH)) {
            for (CheckOption harmful : options) {
                if (harmful.check.risk() == risk) {
                    for (CheckOption harmless : options) {
                        if (harmless.check.risk().compareTo(risk) < 0
                                && harmless.bits >= harmful.bits
                                && harmless.groups.containsAll(harmful.groups)) {
                            harmful.score = Math.min(harmful.score, harmless.score * JUST_BELOW);
                        }
                    }
                }
            }
        }
    }

    int accessMinutes(Check check, Place place) {
        int minutes = 0;
        for (int level = gained(place) + 1; level <= check.access(); level++) {
            minutes += model.settings().accessMinutes().get(level - 1);
        }
        return minutes;
    }

    private int gained(Place place) {
        int gained = place.axle() != null && input.openedAxles().contains(place.axle()) ? OPENED : 0;
        for (Finding finding : input.findings()) {
            if (finding.check() != null) {
                int access = model.accessOf(finding.check());
                boolean here = place.axle() != null
                        && place.axle().equals(finding.place().axle());
                gained = Math.max(gained, here ? access : Math.min(access, 1));
            }
        }
        return gained;
    }

    /** What is taken apart once for all checks that need it. */
    private record Access(int level, @Nullable Integer axle) {

        static Access of(CheckOption option) {
            return new Access(option.check.access(), option.place.axle());
        }
    }
}
