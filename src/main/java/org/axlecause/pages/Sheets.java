package org.axlecause.pages;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;

/** The templates of the sheets. */
@CheckedTemplate(basePath = "sheets")
final class Sheets {

    private Sheets() {}

    static native TemplateInstance customer(Sheet sheet, Medium medium);

    static native TemplateInstance workshop(Sheet sheet, Medium medium);
}
