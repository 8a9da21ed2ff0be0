package org.axlecause.repair;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.axlecause.facts.ReportedStep;
import org.axlecause.facts.WorkReported;
import org.jspecify.annotations.Nullable;

/** The report that stands on each step, the last one in the order that counts, and whether a final test came after it. */
final class Reports {

    private final Map<String, ReportedStep> standing = new TreeMap<>();
    private final Set<String> tested = new TreeSet<>();

    Reports(List<WorkReported> all, int beforeLastTest) {
        for (int i = 0; i < all.size(); i++) {
            ReportedStep step = ReportedStep.ofId(all.get(i).step(), all.get(i).outcome());
            if (step != null) {
                standing.put(step.id(), step);
                if (i < beforeLastTest) {
                    tested.add(step.id());
                } else {
                    tested.remove(step.id());
                }
            }
        }
    }

    List<ReportedStep> all() {
        return List.copyOf(standing.values());
    }

    /** The reports that no final test has followed. */
    List<ReportedStep> sinceLastTest() {
        return standing.values().stream()
                .filter(step -> !tested.contains(step.id()))
                .toList();
    }

    @Nullable
    ReportedStep on(String step) {
        return standing.get(step);
    }

    /** Whether a final test came after the report. */
    boolean isTested(String step) {
        return tested.contains(step);
    }
}
