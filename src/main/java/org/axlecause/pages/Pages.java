package org.axlecause.pages;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import java.util.List;
import org.axlecause.access.Site;
import org.axlecause.policy.PolicyViews;
import org.axlecause.shared.Problem;
import org.jspecify.annotations.Nullable;

/** The templates of the pages. */
@CheckedTemplate(basePath = "pages")
final class Pages {

    private Pages() {}

    static native TemplateInstance start(Frame frame);

    static native TemplateInstance signIn(Frame frame, String to, @Nullable String refused);

    static native TemplateInstance problem(Frame frame, Problem problem);

    static native TemplateInstance bay(Frame frame, CaseGroups groups);

    static native TemplateInstance bayNew(Frame frame, List<Site> sites, String reference);

    static native TemplateInstance bayCase(Frame frame, CaseView view, @Nullable String saved);

    static native TemplateInstance bayObstacle(Frame frame, InTheWay way);

    static native TemplateInstance desk(Frame frame, CaseGroups groups);

    static native TemplateInstance deskCase(Frame frame, CaseView view, @Nullable String saved);

    static native TemplateInstance rulebook(Frame frame, RulebookLists lists);

    static native TemplateInstance rulebookEntry(Frame frame, RulebookEntry entry);

    static native TemplateInstance rulebookCase(Frame frame, String reference, List<RulesOfCase.Group> groups);

    static native TemplateInstance policy(Frame frame, List<PolicyInList> policies, boolean mayEdit, boolean mayCount);

    static native TemplateInstance policyNamed(Frame frame, PolicyHome home, @Nullable String saved);

    static native TemplateInstance policyEffective(Frame frame, EffectivePage page, List<Site> sites);

    static native TemplateInstance policyComparison(Frame frame, PolicyViews.ComparisonView comparison);

    static native TemplateInstance policyDraft(Frame frame, LayerForm form, @Nullable String saved);

    static native TemplateInstance policyPublication(Frame frame, PublicationForm form);

    static native TemplateInstance policyTrial(Frame frame, TrialPage page);

    static native TemplateInstance policyTrialCase(Frame frame, TrialCasePage page);

    static native TemplateInstance policyDepartures(Frame frame, DeparturesPage page);

    static native TemplateInstance numbers(Frame frame, List<NumbersQuestion> questions);

    static native TemplateInstance numbersQuestion(Frame frame, NumbersPage page);
}
