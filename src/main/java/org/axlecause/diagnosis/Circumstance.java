package org.axlecause.diagnosis;

import java.util.List;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.TestCondition;
import org.jspecify.annotations.Nullable;

/**
 * What proves or refutes beside findings: a symptom that shows or could have shown, recent work,
 * or what was reported with a test.
 *
 * @param code its code
 * @param text what it says
 * @param symptom the symptom; null for recent work
 * @param shows whether the symptom must show; otherwise it must have been looked for and not shown
 * @param recentWork items worked on lately
 * @param reported what must have been reported with a test
 */
public record Circumstance(
        String code,
        String text,
        @Nullable SymptomCode symptom,
        boolean shows,
        List<ScopeItem> recentWork,
        List<TestCondition> reported) {}
