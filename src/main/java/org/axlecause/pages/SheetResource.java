package org.axlecause.pages;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.shared.Page;
import org.axlecause.shared.RefusedException;

/** The sheets of a case for people who are signed in, on the screen and as PDF; programs get them by the contract. */
@Page
@Path("/sheets/{reference}/{audience}")
@Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
public class SheetResource {

    private final PrintSheet printSheet;
    private final CurrentActor current;

    SheetResource(PrintSheet printSheet, CurrentActor current) {
        this.printSheet = printSheet;
        this.current = current;
    }

    @GET
    @Produces(MediaType.TEXT_HTML)
    public Response show(@PathParam("reference") String reference, @PathParam("audience") String audience) {
        return sheet(reference, audience, false);
    }

    @GET
    @Path("/pdf")
    @Produces({MediaType.TEXT_HTML, ReportResource.PDF})
    public Response print(@PathParam("reference") String reference, @PathParam("audience") String audience) {
        return sheet(reference, audience, true);
    }

    private Response sheet(String reference, String audience, boolean pdf) {
        Audience whom = Audience.of(audience)
                .orElseThrow(() -> RefusedException.notFound("There is no sheet for '" + audience
                        + "'. There is one for the customer and one for the workshop."));
        return ReportResource.sheet(printSheet.sheet(reference, whom, Medium.PAGE, current.get()), pdf, reference, whom)
                .build();
    }
}
