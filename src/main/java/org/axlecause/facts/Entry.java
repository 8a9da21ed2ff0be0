package org.axlecause.facts;

/** What an event says, once read: the content of one entry in a case's history. */
public sealed interface Entry
        permits VehiclePresented,
                RollerTestRecorded,
                RoadTestRecorded,
                FindingRecorded,
                ObstacleMet,
                ScopeDecided,
                WorkReported,
                DepartureRecorded,
                PolicyAdopted,
                EntryWithdrawn,
                VehicleHandedOver,
                InspectionResulted,
                CaseClosed {}
